// No address here: the server and the tests hand the client its own connections, and our runner applies migrations.
export default {
  schema: '../prisma/schema',
  migrations: { path: '../prisma/migrations' },
};
