import { problemMediaType, problems, problemType, type ProblemCode } from '@holdfast/contract';
import { z } from 'zod';

/** The parts that operations of the OpenAPI document are put together from. */
export type Json = Readonly<Record<string, unknown>>;

export interface OpenApiDocument {
  readonly info: { readonly title: string; readonly version: string; readonly description: string };
  readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>;
}

export interface Operation {
  readonly summary: string;
  readonly description?: string;
  readonly requestBody?: Json;
  readonly responses: Readonly<Record<string, { readonly description: string; readonly content?: Json }>>;
}

export const problemSchema: Json = {
  type: 'object',
  required: ['type', 'code', 'title', 'status', 'detail', 'traceId'],
  properties: {
    type: { type: 'string', enum: (Object.keys(problems) as ProblemCode[]).map(problemType) },
    code: { type: 'string', description: 'Code of the problem, or of the first refusal' },
    title: { type: 'string' },
    status: { type: 'integer' },
    detail: { type: 'string', description: 'A sentence in the locale of the shop' },
    traceId: { type: 'string' },
    errors: {
      type: 'array',
      items: {
        type: 'object',
        properties: { pointer: { type: 'string' }, code: { type: 'string' }, message: { type: 'string' } },
      },
    },
    refusals: {
      type: 'array',
      items: {
        type: 'object',
        properties: {
          code: { type: 'string' },
          facts: { type: 'object' },
          sentence: { type: 'string' },
          way: { type: ['object', 'null'], properties: { table: { type: 'string' }, id: { type: 'string' } } },
        },
      },
    },
    current: {
      type: 'object',
      description: 'With 412: the row as it stands',
      properties: { table: { type: 'string' }, row: { type: 'object' } },
    },
  },
};

export const acceptedSchema: Json = {
  type: 'object',
  required: ['seq', 'at'],
  properties: {
    seq: { type: 'integer', description: "Number of the change in the shop's log" },
    at: { type: 'string', format: 'date-time' },
    created: { type: 'object', description: 'Ids of new rows by table', additionalProperties: { type: 'string' } },
    flags: { type: 'array', items: { type: 'string' }, description: 'Rules that what was recorded goes against' },
    contested: { type: 'array', items: { type: 'string' }, description: 'Reports that clash with what is settled' },
  },
};

export const commandHeaderParameters: Json = {
  key: {
    name: 'Idempotency-Key',
    in: 'header',
    required: true,
    description: 'A UUID of this command. Sent twice with one key it is carried out once and answered twice alike.',
    schema: { type: 'string', format: 'uuid' },
  },
  contract: {
    name: 'Holdfast-Contract',
    in: 'header',
    description: 'Version of the contract that the client speaks; this one and the one before are taken.',
    schema: { type: 'integer' },
  },
  device: { name: 'Holdfast-Device', in: 'header', schema: { type: 'string', maxLength: 60 } },
  sentAt: {
    name: 'Holdfast-Sent-At',
    in: 'header',
    description: "The device's clock, by which `at` of what is reported is corrected.",
    schema: { type: 'string', format: 'date-time' },
  },
};

export function problemResponses(codes: readonly ProblemCode[]): Record<string, { description: string }> {
  const byStatus = new Map<number, string[]>();
  for (const code of codes) {
    const { status, title } = problems[code];
    byStatus.set(status, [...(byStatus.get(status) ?? []), title]);
  }
  const content = { [problemMediaType]: { schema: { $ref: '#/components/schemas/Problem' } } };
  return Object.fromEntries(
    [...byStatus].map(([status, titles]) => [status, { description: titles.join('; or: '), content }]),
  );
}

export function jsonBody(schema: z.ZodType): Json {
  return { required: true, content: { 'application/json': { schema: jsonSchema(schema) } } };
}

export function jsonSchema(schema: z.ZodType): Json {
  const {
    $schema: _dialect,
    '~standard': _standard,
    ...plain
  } = z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' });
  return plain;
}
