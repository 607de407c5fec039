import type { NestFastifyApplication } from '@nestjs/platform-fastify';

/**
 * What browsers are told about our pages: everything comes from here, nothing is written into the page, nobody frames
 * it. Requests that change something must come from our own pages (Fetch Metadata, else Origin against Host); what comes
 * from no browser has neither header and is let through to the checks of sessions.
 */
export function secure(app: NestFastifyApplication, overHttps: boolean): void {
  const own = "'self'";
  app.enableCsrfProtection();
  app.useSecurityHeaders({
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: "'none'",
        scriptSrc: own,
        styleSrc: own,
        fontSrc: own,
        imgSrc: [own, 'blob:', 'data:'],
        // Covers the socket to the same host as well.
        connectSrc: own,
        manifestSrc: own,
        workerSrc: own,
        formAction: own,
        baseUri: "'none'",
        frameAncestors: "'none'",
        objectSrc: "'none'",
      },
    },
    xFrameOptions: { action: 'deny' },
    // Over plain HTTP browsers ignore it; a shop's name on its own network may be served otherwise beside us.
    strictTransportSecurity: overHttps ? { maxAge: 31_536_000, includeSubDomains: false } : false,
  });
}
