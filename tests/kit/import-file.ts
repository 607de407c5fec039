import type { ImportMapping, ImportView, ProblemDetails } from '@holdfast/contract';
import type { ImportKind } from '@holdfast/domain';
import { expect } from '@jest/globals';
import type { HttpAnswer, TestClient } from './app.js';

/** Brings files of existing data in through the API, as the screen does. */
export function uploadImport(
  client: TestClient,
  kind: ImportKind,
  file: string | Uint8Array,
  name = 'file.csv',
): Promise<HttpAnswer> {
  const body = new FormData();
  const bytes = typeof file === 'string' ? new TextEncoder().encode(file) : file;
  body.append('file', new Blob([new Uint8Array(bytes)], { type: 'text/csv' }), name);
  return client.request(`/api/imports?kind=${kind}`, { method: 'POST', body });
}

export async function uploaded(client: TestClient, kind: ImportKind, file: string | Uint8Array): Promise<ImportView> {
  const answer = await uploadImport(client, kind, file);
  expect([answer.status, (answer.json as ProblemDetails | undefined)?.detail]).toEqual([200, undefined]);
  return answer.json as ImportView;
}

export function mapImport(client: TestClient, importId: string, mapping: ImportMapping): Promise<HttpAnswer> {
  return client.request(`/api/imports/${importId}/mapping`, {
    method: 'PUT',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ mapping }),
  });
}

export async function importNow(client: TestClient, importId: string): Promise<ImportView> {
  const answer = await client.get(`/api/imports/${importId}`);
  expect(answer.status).toBe(200);
  return answer.json as ImportView;
}

/** Looks at the rows under the mapping (the proposed one unless another is given) and waits until all are looked at. */
export async function checkedImport(
  client: TestClient,
  view: ImportView,
  mapping = view.batch.mapping as ImportMapping,
): Promise<ImportView> {
  expect((await mapImport(client, view.batch.id, mapping)).status).toBe(200);
  for (;;) {
    const now = await importNow(client, view.batch.id);
    if (now.batch.state !== 'checking') return now;
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}
