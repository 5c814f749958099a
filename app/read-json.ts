import 'server-only'
import { readBytes } from './read-bytes'

type Read = { ok: true; value: unknown } | { ok: false; status: 400 | 413 | 415 }

/** Reads a request's JSON, no further than `mostBytes`, whatever its length header says. */
export async function readJson(request: Request, mostBytes: number): Promise<Read> {
  if (request.headers.get('content-type')?.split(';')[0]?.trim().toLowerCase() !== 'application/json')
    return { ok: false, status: 415 }
  const bytes = await readBytes(request, mostBytes)
  if (!bytes) return { ok: false, status: 413 }
  try {
    return { ok: true, value: JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes)) }
  } catch {
    // Not UTF-8 or not JSON: either way nothing that can be read.
    return { ok: false, status: 400 }
  }
}
