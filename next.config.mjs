// Headers that hold for every answer; the content security policy is made for each request in proxy.ts.
const permissions = ({ camera }) =>
  `camera=(${camera ? 'self' : ''}), microphone=(), geolocation=(), payment=(), usb=()`
const headers = [
  { key: 'X-Content-Type-Options', value: 'nosniff' },
  { key: 'Referrer-Policy', value: 'same-origin' },
  { key: 'Permissions-Policy', value: permissions({ camera: false }) },
  { key: 'Cross-Origin-Opener-Policy', value: 'same-origin' },
  { key: 'X-Frame-Options', value: 'DENY' },
]

/** @type {import('next').NextConfig} */
export default {
  // The database client and the hash are native or generated code; bundling them gains nothing.
  serverExternalPackages: [
    '@node-rs/argon2',
    '@prisma/client',
    '@prisma/adapter-pg',
    'pg',
    'pino',
    'piscina',
    '@zxcvbn-ts/language-common',
    'bwip-js',
  ],
  poweredByHeader: false,
  productionBrowserSourceMaps: false,
  images: { unoptimized: true },
  // `npm test` checks the types, of the tests too; a start need not wait for that.
  typescript: { ignoreBuildErrors: true },
  // A file of readings may have 1 MB; it comes in a form, with what was pasted and how it is matched.
  experimental: { authInterrupts: true, serverActions: { bodySizeLimit: '3mb' } },
  // Browsers ask for it by this name on pages that name no icon, such as a refusal.
  rewrites: async () => [{ source: '/favicon.ico', destination: '/icon.svg' }],
  headers: async () => [
    { source: '/:path*', headers },
    // Slips are read on the tablet's page alone; of two values for a header the later one holds.
    { source: '/station', headers: [{ key: 'Permissions-Policy', value: permissions({ camera: true }) }] },
  ],
}
