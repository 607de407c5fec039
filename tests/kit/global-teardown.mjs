export default async function tearDown() {
  await globalThis.holdfastTestServer?.stop();
}
