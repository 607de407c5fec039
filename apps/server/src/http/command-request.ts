import { acceptsContract, commands, inputFromWire, type FieldError } from '@holdfast/contract';
import type { CommandName } from '@holdfast/domain';
import { createHash } from 'node:crypto';
import type { IncomingHttpHeaders } from 'node:http';
import type { ZodError } from 'zod';
import type { Sent } from '../engine/ports.js';
import { Problem } from './problem.js';

const uuid = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;
const isoInstant = /^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d(\.\d{1,9})?)?(Z|[+-]\d\d:\d\d)$/;
/** Printable, and short enough to stand in every row of the log. */
const deviceName = /^[\x20-\x7e\xa0-\xff]{1,60}$/;

/** Headers that any command may carry. */
export interface CommandHeaders {
  readonly key: string;
  readonly device: string | null;
  /** Epoch ms by the device's clock. */
  readonly sentAt: number | null;
}

/** Reads and checks the headers of a command; a `Problem` is thrown for the first that does not hold. */
export function commandHeaders(headers: IncomingHttpHeaders): CommandHeaders {
  const contract = one(headers['holdfast-contract']);
  if (contract !== null) {
    if (!/^\d{1,9}$/.test(contract)) throw new Problem('header.invalid', { values: { header: 'Holdfast-Contract' } });
    if (!acceptsContract(Number(contract))) throw new Problem('contract.reload');
  }
  const device = one(headers['holdfast-device']);
  if (device !== null && !deviceName.test(device)) {
    throw new Problem('header.invalid', { values: { header: 'Holdfast-Device' } });
  }
  const sentAt = one(headers['holdfast-sent-at']);
  if (sentAt !== null && (!isoInstant.test(sentAt) || Number.isNaN(Date.parse(sentAt)))) {
    throw new Problem('header.invalid', { values: { header: 'Holdfast-Sent-At' } });
  }
  return { key: keyOf(headers), device, sentAt: sentAt === null ? null : Date.parse(sentAt) };
}

/** The key of a request: a UUID, bare or as a structured-field string in quotes (draft-ietf-httpapi-idempotency-key-header). */
export function keyOf(headers: IncomingHttpHeaders): string {
  const said = one(headers['idempotency-key'])?.replace(/^"(.*)"$/, '$1');
  if (said === undefined || !uuid.test(said)) throw new Problem('key.missing');
  return said.toLowerCase();
}

/** Whether the body is said to be JSON; Fastify has refused what it has no parser for, but not a body left out. */
export function requireJson(headers: IncomingHttpHeaders): void {
  const type = headers['content-type']?.split(';', 1)[0]?.trim().toLowerCase();
  if (type !== 'application/json') throw new Problem('body.notJson', { values: { type: 'application/json' } });
}

/** The body checked against the strict schema of its command; a `Problem` with every place that does not fit otherwise. */
export function readCommand<N extends CommandName>(name: N, body: unknown, { key, sentAt }: CommandHeaders): Sent<N> {
  if (body === undefined) throw new Problem('body.malformed');
  const checked = commands[name].schema.safeParse(body);
  if (!checked.success) throw new Problem('body.invalid', { errors: fieldErrors(checked.error) });
  return { name, input: inputFromWire<N>(checked.data), key, fingerprint: fingerprintOf(name, checked.data), sentAt };
}

/** Which places do not fit, as JSON pointers; the values themselves are not repeated. */
export function fieldErrors(error: ZodError): FieldError[] {
  return error.issues.slice(0, 50).flatMap((issue): FieldError[] => {
    const at = issue.path.map((part) => `/${String(part).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');
    if (issue.code !== 'unrecognized_keys') return [{ pointer: at, code: issue.code, message: issue.message }];
    return issue.keys
      .slice(0, 20)
      .map((name) => ({ pointer: `${at}/${name.slice(0, 60)}`, code: issue.code, message: 'There is no such field.' }));
  });
}

/** SHA-256 over the name and the body with its members in order; a password is left out, so that no hash of it is kept. */
function fingerprintOf(name: string, body: unknown): string {
  return createHash('sha256')
    .update(`${name} ${canonical(body)}`)
    .digest('hex');
}

function canonical(value: unknown): string {
  if (value === null || typeof value !== 'object') return JSON.stringify(value);
  if (Array.isArray(value)) return `[${value.map((item) => canonical(item === undefined ? null : item)).join(',')}]`;
  const members = Object.entries(value)
    .filter(([member, content]) => content !== undefined && member !== 'password')
    .sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${members.map(([member, content]) => `${JSON.stringify(member)}:${canonical(content)}`).join(',')}}`;
}

function one(header: string | string[] | undefined): string | null {
  if (header === undefined) return null;
  return typeof header === 'string' ? header : header.join(', ');
}
