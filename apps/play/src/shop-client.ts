/** The server as the player sees it: plain HTTP, one session for each person, as in the outside surface of the program. */
import type {
  BayTimeView,
  BoardAnswer,
  ChangesAnswer,
  DemoView,
  ProblemDetails,
  SignedInView,
  UploadView,
} from '@holdfast/contract';
import { randomUUID } from 'node:crypto';

export interface Accepted {
  readonly seq: number;
  readonly at: string;
  readonly created: Readonly<Record<string, string>>;
  readonly flags: readonly string[];
  readonly contested: readonly string[];
}

export type CommandAnswer =
  { readonly ok: true; readonly accepted: Accepted } | { readonly ok: false; readonly problem: ProblemDetails };

/** The server gave no answer that this program understands. */
export class ServerFault extends Error {
  override readonly name = 'ServerFault';
}

export class ShopClient {
  constructor(private readonly url: string) {}

  async demo(): Promise<DemoView | null> {
    const response = await this.fetch('/api/demo');
    return response.status === 200 ? ((await response.json()) as DemoView) : null;
  }

  async signIn(shop: string, name: string, password: string): Promise<SignedInView> {
    const response = await this.fetch('/api/session', { method: 'POST', body: { shop, name, password } });
    if (response.status !== 200) throw new ServerFault(`${name} could not sign in: ${await response.text()}`);
    return (await response.json()) as SignedInView;
  }

  async command(token: string | null, name: string, input: unknown): Promise<CommandAnswer> {
    const response = await this.fetch(`/api/commands/${name}`, {
      method: 'POST',
      body: input,
      token,
      key: randomUUID(),
    });
    const body: unknown = await response.json();
    if (response.status === 200) return { ok: true, accepted: body as Accepted };
    return { ok: false, problem: body as ProblemDetails };
  }

  async setClock(token: string, at: string, rate: number): Promise<void> {
    const response = await this.fetch('/api/demo/clock', { method: 'PUT', body: { at, rate }, token });
    if (response.status !== 200) throw new ServerFault(`The clock could not be set to ${at}: ${await response.text()}`);
  }

  board(token: string): Promise<BoardAnswer> {
    return this.read(token, '/api/board');
  }

  changes(token: string, after: number): Promise<ChangesAnswer> {
    return this.read(token, `/api/changes?after=${after}`);
  }

  bayTime(token: string, day: string): Promise<BayTimeView> {
    return this.read(token, `/api/bay-time?from=${day}&to=${day}`);
  }

  async upload(token: string, picture: Buffer): Promise<UploadView> {
    const body = new FormData();
    body.append('photo', new Blob([new Uint8Array(picture)]), 'picture');
    const response = await fetch(`${this.url}/api/uploads`, {
      method: 'POST',
      body,
      headers: { authorization: `Bearer ${token}` },
    });
    if (response.status >= 300) throw new ServerFault(`A picture could not be uploaded: ${await response.text()}`);
    return (await response.json()) as UploadView;
  }

  private async read<T>(token: string, path: string): Promise<T> {
    const response = await this.fetch(path, { token });
    if (response.status !== 200) throw new ServerFault(`${path}: ${response.status} ${await response.text()}`);
    return (await response.json()) as T;
  }

  private fetch(
    path: string,
    {
      method = 'GET',
      body,
      token = null,
      key,
    }: { method?: string; body?: unknown; token?: string | null; key?: string } = {},
  ): Promise<Response> {
    const headers: Record<string, string> = {};
    if (body !== undefined) headers['content-type'] = 'application/json';
    if (token !== null) headers['authorization'] = `Bearer ${token}`;
    if (key !== undefined) headers['idempotency-key'] = key;
    return fetch(
      `${this.url}${path}`,
      body === undefined ? { method, headers } : { method, headers, body: JSON.stringify(body) },
    );
  }
}
