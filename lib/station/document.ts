import { station as words } from '../words/en/station'

/** The one page of a tablet: no data, no person, and nothing that runs or is styled but the two files. */
export function stationDocument({ script, style }: { script: string; style: string }): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<title>${words.title}</title>
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<meta name="robots" content="noindex">
<link rel="icon" href="/icon.svg">
<link rel="manifest" href="/station/app.webmanifest">
<link rel="stylesheet" href="${style}">
<script type="module" src="${script}"></script>
</head>
<body>
<div id="station"></div>
<noscript>${words.noScript}</noscript>
</body>
</html>
`
}
