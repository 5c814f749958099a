import { createHash, X509Certificate } from 'node:crypto'
import { v5 } from 'uuid'
import type { FrontFacts } from '../../kitchen/stations/front-facts'
import { say } from '../../words/say'
import { wordsIn } from '../../words/words'
import { mobileProfile } from './mobile-profile'

export type TrustAnswer = { status: number; headers: Record<string, string>; body: string | Buffer }

const style = `:root{color-scheme:light dark;font:1.0625rem/1.5 system-ui,sans-serif}
body{margin:0 auto;max-width:44rem;padding:1.25rem;overflow-wrap:break-word}
h1{font-size:1.75rem;line-height:1.2;margin:0 0 .5rem}h2{font-size:1.125rem;margin:2rem 0 .25rem}
a.file{display:inline-block;margin:.5rem 1rem .5rem 0;padding:.75rem 1.25rem;border:2px solid;font-weight:600;color:inherit}
dt{margin-top:.75rem}dd{margin:0;font-weight:600}li{margin:.375rem 0}`

const common = {
  'Cache-Control': 'no-store',
  'Referrer-Policy': 'no-referrer',
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY',
  'Content-Security-Policy': `default-src 'none'; style-src 'sha256-${createHash('sha256').update(style).digest('base64')}'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'`,
}
const page = { ...common, 'Content-Type': 'text/html; charset=utf-8' }

/** Any fixed id: profiles of one certificate have the same ids, so that a device knows one again. */
const profileSpace = '3e9d1f2c-6a57-4a0e-9a36-5b8f0c1d7e42'

/**
 * What the plain http listener answers: one page on how to trust the bakery's certificate, the certificate, and a profile
 * with it for iPads. Nothing of the bakery is in it, and nothing leads anywhere but to the one https address.
 */
export function trustAnswers(
  { origin, certificate: facts }: Pick<FrontFacts, 'origin' | 'certificate'>,
  certificate: string,
): (method: string, path: string) => TrustAnswer {
  const text = wordsIn('en').stations
  const der = new X509Certificate(certificate).raw
  const profile = mobileProfile({
    name: facts.name,
    description: text.door.profileText,
    der,
    ids: [v5(`${facts.fingerprint} profile`, profileSpace), v5(`${facts.fingerprint} certificate`, profileSpace)],
  })
  const answers: Record<string, TrustAnswer> = {
    '/': { status: 200, headers: page, body: pageOf(origin, facts) },
    '/certificate': {
      status: 200,
      headers: {
        ...common,
        'Content-Type': 'application/x-x509-ca-cert',
        'Content-Disposition': 'attachment; filename="evendough.crt"',
      },
      body: der,
    },
    // Kept as a file it would not be offered for installing.
    '/profile': {
      status: 200,
      headers: { ...common, 'Content-Type': 'application/x-apple-aspen-config' },
      body: profile,
    },
  }
  const notHere: TrustAnswer = {
    status: 404,
    headers: page,
    body: frame(text.title, `<p>${safe(text.door.notHere)}</p>`),
  }
  return (method, path) => {
    if (method !== 'GET' && method !== 'HEAD')
      return { status: 405, headers: { ...common, Allow: 'GET, HEAD' }, body: '' }
    const wanted = path.split('?', 1)[0] ?? ''
    return Object.hasOwn(answers, wanted) ? (answers[wanted] ?? notHere) : notHere
  }
}

function pageOf(origin: string, facts: FrontFacts['certificate']): string {
  const station = `${origin}/station`
  const text = wordsIn('en').stations
  const { ipad, android, windows } = text.devices
  const steps = [ipad, android, windows].map(
    ({ title, first, second, third, fourth }) =>
      `<h2>${safe(title)}</h2><ol>${[first, second, third, fourth].map((step) => `<li>${safe(step)}</li>`).join('')}</ol>`,
  )
  const figures = [
    [text.certificateName, facts.name],
    [text.fingerprint, facts.fingerprint],
    [text.thumbprint, facts.thumbprint],
    [text.vouchesFor, say(text.vouchesForText, 'en', { name: facts.host, networks: facts.networks })],
  ].map(([term = '', detail = '']) => `<dt>${safe(term)}</dt><dd>${safe(detail)}</dd>`)
  return frame(
    text.door.title,
    `<p>${safe(say(text.door.lead, 'en', { address: origin }))}</p>
<p>${safe(text.door.compare)}</p>
<p><a class="file" href="/profile">${safe(text.door.profile)}</a><a class="file" href="/certificate">${safe(text.door.certificate)}</a></p>
<dl>${figures.join('')}</dl>
<p><small>${safe(text.untried)}</small></p>
${steps.join('\n')}
<p>${safe(text.door.then)} <a href="${safe(station)}">${safe(station)}</a></p>`,
  )
}

function frame(title: string, body: string): string {
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${safe(title)}</title>
<style>${style}</style></head>
<body><h1>${safe(title)}</h1>
${body}
</body></html>
`
}

function safe(text: string): string {
  return text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`)
}
