import { clockBody, mappingBody, signInBody } from '@holdfast/contract';
import { importKinds } from '@holdfast/domain';
import { jsonBody, problemResponses, type Json, type Operation } from './openapi-parts.js';

const answered = (description: string) => ({ 200: { description } });

/** Operations that are neither commands nor reads of a shop. */
export const fixedPaths: Readonly<Record<string, Record<string, Operation & Json>>> = {
  '/api/session': {
    post: {
      tags: ['session'],
      summary: 'Signs in; the answer holds the token for clients without cookies',
      requestBody: jsonBody(signInBody),
      responses: {
        ...answered('Signed in'),
        ...problemResponses([
          'session.notMatching',
          'session.needsHttps',
          'session.wait',
          'body.invalid',
          'server.busy',
        ]),
      },
      security: [],
    },
    get: {
      tags: ['session'],
      summary: 'Who, which roles, what one may do',
      responses: { ...answered('Signed in'), ...problemResponses(['session.missing']) },
    },
    delete: {
      tags: ['session'],
      summary: 'Signs out, everywhere at once',
      responses: { 204: { description: 'Signed out' }, ...problemResponses(['session.missing']) },
    },
  },
  '/api/sign-in-page': {
    get: {
      tags: ['session'],
      summary: 'What a sign-in page has to know',
      responses: answered('Always'),
      security: [],
    },
  },
  '/api/demo': {
    get: {
      tags: ['demo'],
      summary: "The demo's sign-ins and the code for further shops",
      responses: { ...answered('With the demo'), ...problemResponses(['demo.absent']) },
      security: [],
    },
  },
  '/api/demo/clock': {
    put: {
      tags: ['demo'],
      summary: 'Sets the clock of the demo or of a shop for trying',
      requestBody: jsonBody(clockBody),
      responses: {
        ...answered('Set'),
        ...problemResponses([
          'demo.absent',
          'session.missing',
          'role.mayNot',
          'clock.real',
          'clock.behind',
          'body.invalid',
        ]),
      },
    },
  },
  '/api/uploads': {
    post: {
      tags: ['photos'],
      summary: 'One photo (JPEG, PNG, WebP, at most 15 MB); drawn anew without what the camera wrote beside it',
      requestBody: {
        required: true,
        content: {
          'multipart/form-data': {
            schema: { type: 'object', properties: { photo: { type: 'string', format: 'binary' } } },
          },
        },
      },
      responses: {
        ...answered('Kept; `content` names it'),
        ...problemResponses([
          'upload.missing',
          'session.missing',
          'role.mayNot',
          'body.tooLarge',
          'body.notJson',
          'upload.notAPhoto',
          'server.busy',
        ]),
      },
    },
  },
  '/api/imports': {
    post: {
      tags: ['imports'],
      summary:
        'A file of existing data (CSV in UTF-8, UTF-16 or Windows-1252; commas, semicolons or tabs; at most 20 MB and 30 000 rows), put beside the shop’s rows',
      parameters: [{ name: 'kind', in: 'query', required: true, schema: { type: 'string', enum: importKinds } }],
      requestBody: {
        required: true,
        content: {
          'multipart/form-data': {
            schema: { type: 'object', properties: { file: { type: 'string', format: 'binary' } } },
          },
        },
      },
      responses: {
        ...answered('Put beside; `batch.id` names it, `batch.mapping` is what its header proposes'),
        ...problemResponses([
          'upload.missing',
          'session.missing',
          'role.mayNot',
          'body.tooLarge',
          'body.notJson',
          'upload.notCsv',
          'upload.tooManyRows',
          'query.invalid',
        ]),
      },
    },
  },
  '/api/imports/{id}': {
    delete: {
      tags: ['imports'],
      summary: 'Puts a file aside and clears its rows away; of one that was accepted, what was left of it',
      responses: {
        204: { description: 'Cleared away' },
        ...problemResponses(['session.missing', 'role.mayNot', 'row.notFound']),
      },
    },
  },
  '/api/imports/{id}/mapping': {
    put: {
      tags: ['imports'],
      summary: 'Says which column is which; from then on the rows are looked at',
      requestBody: jsonBody(mappingBody),
      responses: {
        ...answered('Being looked at'),
        ...problemResponses([
          'session.missing',
          'role.mayNot',
          'row.notFound',
          'import.ended',
          'import.mapping',
          'body.invalid',
        ]),
      },
    },
  },
  '/api/photos/{content}': {
    get: {
      tags: ['photos'],
      summary: 'A photo, or with `size=small` its small copy',
      responses: {
        200: { description: 'The photo', content: { 'image/jpeg': {} } },
        ...problemResponses(['session.missing', 'read.mayNot', 'photo.unknown']),
      },
    },
  },
};
