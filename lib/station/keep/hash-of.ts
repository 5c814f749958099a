/** SHA-256 of a text, as the book writes it. */
export function hashOf(text: string): Promise<string> {
  return hashOfBytes(new TextEncoder().encode(text))
}

/** SHA-256 of bytes, as the book writes it. */
export async function hashOfBytes(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', bytes)
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('')
}
