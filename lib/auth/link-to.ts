import 'server-only'

/** A link to hand to somebody, at the configured address and never at what a request's Host header says. */
export function linkTo(path: string): string {
  return new URL(path, process.env.NEXTAUTH_URL).href
}
