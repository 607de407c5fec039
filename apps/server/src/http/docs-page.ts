import type { OpenApiDocument, Operation } from './openapi-parts.js';

/** The OpenAPI document for people: one page without script or style sheet, so that it needs nothing from elsewhere. */
export function docsPage({ info, paths }: OpenApiDocument): string {
  const operations = Object.entries(paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, operation]) => ({ title: `${method.toUpperCase()} ${path}`, operation })),
  );
  return `<!doctype html>
<html lang="en-GB">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(info.title)} ${escaped(info.version)}: the API</title>
</head>
<body>
<main>
<h1>${escaped(info.title)} ${escaped(info.version)}: the API</h1>
<p>${escaped(info.description)}</p>
<p>The same for programs: <a href="/openapi.json">openapi.json</a>.</p>
<ul>
${operations.map(({ title }) => `<li><a href="#${anchor(title)}"><code>${escaped(title)}</code></a></li>`).join('\n')}
</ul>
${operations.map(({ title, operation }) => section(title, operation)).join('\n')}
</main>
</body>
</html>
`;
}

function section(title: string, { summary, description, requestBody, responses }: Operation): string {
  const body =
    requestBody === undefined
      ? ''
      : `<details><summary>Body</summary><pre>${escaped(JSON.stringify(requestBody['content'], null, 2))}</pre></details>`;
  const answers = Object.entries(responses)
    .map(([status, answer]) => `<dt><code>${escaped(status)}</code></dt><dd>${escaped(answer.description)}</dd>`)
    .join('\n');
  return `<section id="${anchor(title)}">
<h2><code>${escaped(title)}</code></h2>
<p>${escaped(summary)}${description === undefined ? '' : ` ${escaped(description)}`}</p>
${body}
<dl>
${answers}
</dl>
</section>`;
}

function anchor(title: string): string {
  return title.replace(/[^A-Za-z]+/g, '-').replace(/^-|-$/g, '');
}

function escaped(text: string): string {
  return text.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);
}
