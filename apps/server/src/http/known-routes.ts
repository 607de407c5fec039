/** Which methods an address takes, from the routes as they were registered. The fallback of the web client counts not. */
export class KnownRoutes {
  private readonly routes: { readonly method: string; readonly pattern: RegExp }[] = [];

  add(method: string | readonly string[], url: string): void {
    if (url.includes('*')) return;
    const parts = url
      .split('/')
      .map((part) => (part.startsWith(':') ? '[^/]+' : part.replace(/[.+?^${}()|[\]\\]/g, '\\$&')));
    const pattern = new RegExp(`^${parts.join('/')}$`);
    for (const each of typeof method === 'string' ? [method] : method) this.routes.push({ method: each, pattern });
  }

  methodsOf(path: string): string[] {
    return [...new Set(this.routes.filter(({ pattern }) => pattern.test(path)).map(({ method }) => method))];
  }
}
