import { stationFile } from '@/app/station-files'

const types: Record<string, string> = {
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
}

/** A file of a tablet's bundle: its name says its content, so it never changes. */
export async function GET(_: Request, { params }: { params: Promise<{ name: string }> }): Promise<Response> {
  const { name } = await params
  const type = types[/\.\w+$/.exec(name)?.[0] ?? '']
  const contents = type ? stationFile(name) : null
  if (!type || !contents) return new Response(null, { status: 404 })
  return new Response(contents, {
    headers: { 'Content-Type': type, 'Cache-Control': 'public, max-age=31536000, immutable' },
  })
}
