import { Controller, Get, Inject, Res } from '@nestjs/common';
import { READINESS } from '../providers.js';
import type { Readiness } from './health.controller.js';
import { docsPage } from './docs-page.js';
import type { HttpReply } from './http-types.js';
import { openApiDocument, openApiText } from './openapi.js';

@Controller()
export class DocsController {
  constructor(@Inject(READINESS) private readonly readiness: Readiness) {}

  @Get('openapi.json')
  document(@Res() reply: HttpReply): void {
    reply.header('content-type', 'application/json; charset=utf-8').send(openApiText(this.readiness.version));
  }

  @Get('docs')
  page(@Res() reply: HttpReply): void {
    reply.header('content-type', 'text/html; charset=utf-8').send(docsPage(openApiDocument(this.readiness.version)));
  }
}
