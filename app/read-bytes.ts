import 'server-only'

/** Reads a request's body, no further than `mostBytes`, whatever its length header says; null when there is more. */
export async function readBytes(request: Request, mostBytes: number): Promise<Uint8Array<ArrayBuffer> | null> {
  const parts: Uint8Array[] = []
  let bytes = 0
  const reader = request.body?.getReader()
  for (let next = await reader?.read(); next && !next.done; next = await reader?.read()) {
    bytes += next.value.byteLength
    if (bytes > mostBytes) {
      await reader?.cancel()
      return null
    }
    parts.push(next.value)
  }
  return new Uint8Array(Buffer.concat(parts))
}
