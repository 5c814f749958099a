type Asked = { method: string; mode: string; url: string }

/**
 * What the worker answers from what it keeps: the document, opened as a page, and the files of its own build. Everything
 * else goes past it, the API above all, and so do the desk's pages whose addresses begin alike.
 * @returns the address under which it is kept; null for what is none of its business
 */
export function answersFor({ method, mode, url }: Asked, origin: string, files: readonly string[]): string | null {
  const asked = new URL(url)
  if (method !== 'GET' || asked.origin !== origin) return null
  if (asked.pathname === '/station') return mode === 'navigate' ? '/station' : null
  return files.includes(asked.pathname) ? asked.pathname : null
}
