import { commandNames, commands, mayDo, type ProblemCode } from '@holdfast/contract';
import type { z } from 'zod';
import { fixedPaths } from './openapi-fixed-paths.js';
import {
  acceptedSchema,
  commandHeaderParameters,
  jsonBody,
  jsonSchema,
  problemResponses,
  problemSchema,
  type Json,
  type OpenApiDocument,
  type Operation,
} from './openapi-parts.js';

/**
 * The OpenAPI document, made from the contract: one operation for each command although one route serves them all, so
 * that what is written there is what is checked. Reads add theirs with `describeRead` beside their controller.
 */
export interface ReadDescription {
  /** With parameters in braces: `/api/jobs/{id}`. */
  readonly path: string;
  readonly summary: string;
  /** Parameters of the query; those of the path are read from it. */
  readonly query?: z.ZodObject;
  /** Left out where the answer is described in words only. */
  readonly response?: z.ZodType;
  /** Answers beside 200, 401 and 403. */
  readonly problems?: readonly ProblemCode[];
}

const reads: ReadDescription[] = [];

/** To be called once, where the module of a read's controller is loaded. */
export function describeRead(read: ReadDescription): void {
  reads.push(read);
}

let made: string | undefined;

/** The document as JSON text; made when it is first asked for. */
export function openApiText(version: string): string {
  made ??= JSON.stringify(openApiDocument(version));
  return made;
}

export function openApiDocument(version: string): OpenApiDocument & Json {
  const paths: Record<string, Record<string, Operation & Json>> = { ...fixedPaths };
  for (const name of commandNames) paths[`/api/commands/${name}`] = { post: commandOperation(name) };
  for (const read of [...reads].sort((a, b) => (a.path < b.path ? -1 : 1)))
    paths[read.path] = { ...paths[read.path], get: readOperation(read) };
  return {
    openapi: '3.1.0',
    info: {
      title: 'Holdfast',
      version,
      description:
        'Writing goes through commands, each with a key of its own; reading through resources. Instants are ISO 8601, amounts decimal strings. Every refusal is a problem (RFC 9457) whose detail is a sentence for a person.',
    },
    security: [{ token: [] }, { cookie: [] }],
    paths,
    components: {
      securitySchemes: {
        token: { type: 'http', scheme: 'bearer' },
        cookie: { type: 'apiKey', in: 'cookie', name: '__Host-holdfast' },
      },
      schemas: { Problem: problemSchema, Accepted: acceptedSchema },
      parameters: commandHeaderParameters,
    },
  };
}

const commandProblems: readonly ProblemCode[] = [
  'body.malformed',
  'key.missing',
  'header.invalid',
  'session.missing',
  'role.mayNot',
  'row.notFound',
  'refused',
  'contract.reload',
  'row.stale',
  'body.tooLarge',
  'body.notJson',
  'body.invalid',
  'key.usedOtherwise',
  'row.versionMissing',
  'server.busy',
];

function commandOperation(name: (typeof commandNames)[number]): Operation & Json {
  const { schema, class: kind, row, summary } = commands[name];
  const turn = row === null ? '' : ` Rests on the version of its ${row.table} (\`${row.field}\`).`;
  const roles = mayDo[name];
  const who = roles.length === 0 ? 'By whoever has the set-up code.' : `By: ${roles.join(', ')}.`;
  return {
    operationId: name,
    tags: ['commands'],
    summary,
    description: `A ${kind}.${turn} ${who}`,
    parameters: Object.keys(commandHeaderParameters).map((part) => ({ $ref: `#/components/parameters/${part}` })),
    requestBody: jsonBody(schema),
    responses: {
      200: {
        description: 'Accepted',
        content: { 'application/json': { schema: { $ref: '#/components/schemas/Accepted' } } },
      },
      ...problemResponses(commandProblems),
    },
    ...(name === 'setUpShop' ? { security: [] } : {}),
  };
}

function readOperation({ path, summary, query, response, problems: more = [] }: ReadDescription): Operation & Json {
  const inPath = [...path.matchAll(/\{(\w+)\}/g)].map(([, name]) => ({
    name,
    in: 'path',
    required: true,
    schema: { type: 'string' },
  }));
  const schema = response === undefined ? {} : jsonSchema(response);
  return {
    tags: ['reads'],
    summary,
    parameters: [...inPath, ...(query === undefined ? [] : queryParameters(query))],
    responses: {
      200: { description: 'As asked for', content: { 'application/json': { schema } } },
      ...problemResponses([
        'session.missing',
        'read.mayNot',
        ...more,
        ...(query === undefined ? [] : (['query.invalid'] as const)),
      ]),
    },
  };
}

function queryParameters(query: z.ZodObject): Json[] {
  const { properties = {}, required = [] } = jsonSchema(query) as {
    properties?: Record<string, Json>;
    required?: string[];
  };
  return Object.entries(properties).map(([name, schema]) => ({
    name,
    in: 'query',
    required: required.includes(name),
    schema,
  }));
}
