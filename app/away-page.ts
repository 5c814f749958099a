import 'server-only'
import { wordsIn, type Language } from '@/lib/words/words'

/**
 * The page that stands under every address while the database is away: whole in itself, because proxy.ts answers with
 * it before the app draws anything. It needs no script; its one style carries the nonce. Colours and sizes are those
 * of app/globals.css, which a test compares.
 */
export function awayPage(language: Language, nonce: string): string {
  const { desk } = wordsIn(language)
  const { errors: text } = desk
  return `<!DOCTYPE html>
<html lang="${language}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="robots" content="noindex">
<title>${asHtml(text.away)} · ${asHtml(desk.product)}</title>
<link rel="icon" href="/icon.svg" type="image/svg+xml">
<style nonce="${nonce}">${style}</style>
</head>
<body>
<header><p>${asHtml(desk.product)}</p></header>
<main>
<h1>${asHtml(text.away)}</h1>
<p class="lead">${asHtml(text.awayWhy)}</p>
<p>${asHtml(text.awayTodo)}</p>
<p><a href="">${asHtml(text.again)}</a></p>
</main>
</body>
</html>
`
}

const style = `
:root { color-scheme: light dark }
* { margin: 0; box-sizing: border-box }
body { background: light-dark(#f6f7f3, #121516); color: light-dark(#15191b, #eceee9); font: 0.9375rem/1.45 system-ui, sans-serif; overflow-wrap: break-word }
header { border-bottom: 1px solid light-dark(#c8cec9, #3a4244); font-weight: 700 }
header p, main { max-width: 82.5rem; margin: 0 auto; padding: 0.875rem 1.25rem }
main > * { max-width: 32rem }
main > * + * { margin-top: 1.75rem }
h1 { margin-top: 1.5rem; font-size: 1.875rem; line-height: 1.2; letter-spacing: -0.01em; font-weight: 600; text-wrap: balance }
h1 + .lead { margin-top: 0.75rem; font-size: 1.25rem; line-height: 1.4 }
a { display: inline-flex; align-items: center; min-height: 2.75rem; padding: 0.5rem 1.25rem; border: 2px solid light-dark(#b93a16, #f2743f); background: light-dark(#b93a16, #f2743f); color: light-dark(#ffffff, #17110e); font-size: 1rem; font-weight: 600; text-decoration: none }
a:hover { border-color: light-dark(#15191b, #eceee9) }
a:focus-visible { outline: 3px solid light-dark(#15191b, #eceee9); outline-offset: 2px }
@media (min-width: 58rem) {
  header p { padding: 0.875rem 2rem }
  main { padding: 4rem 2rem 4rem 17.5rem }
}
`

function asHtml(text: string): string {
  return text.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`)
}
