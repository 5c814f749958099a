import { station as words } from '@/lib/words/en/station'

/** What a tablet's home screen shows, and that it opens without the bars of a browser (W3C Web Application Manifest). */
export function GET(): Response {
  const manifest = {
    id: '/station',
    name: words.title,
    short_name: words.title,
    lang: 'en',
    start_url: '/station',
    scope: '/station',
    display: 'standalone',
    background_color: '#f6f7f3',
    theme_color: '#15191b',
    icons: [{ src: '/icon.svg', sizes: 'any', type: 'image/svg+xml' }],
  }
  return new Response(JSON.stringify(manifest), {
    headers: { 'Content-Type': 'application/manifest+json', 'Cache-Control': 'no-cache' },
  })
}
