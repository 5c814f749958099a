import fs from 'node:fs'
import { z } from 'zod'

export type SignedIn = {
  /** Opens a page as the owner. @returns its HTML, read to the end, or null when it is not answered with 200 */
  openPage(address: string): Promise<string | null>
}

const cookiesOf = (response: Response) => response.headers.getSetCookie().map((cookie) => cookie.split(';')[0]!)

/** Signs the demo's owner in over HTTP, as the sign-in page does. @throws Error when the owner is not let in */
export async function signInAsOwner(url: string, signInFile: string): Promise<SignedIn> {
  const [, email, password] = /^(\S+@\S+) {2}(\S+) {2}.*, owner$/m.exec(fs.readFileSync(signInFile, 'utf8')) ?? []
  if (!email || !password) throw new Error(`${signInFile} names no owner`)
  const asked = await fetch(`${url}/api/auth/csrf`)
  const { csrfToken } = z.object({ csrfToken: z.string() }).parse(await asked.json())
  const answered = await fetch(`${url}/api/auth/callback/credentials`, {
    method: 'POST',
    redirect: 'manual',
    headers: { Cookie: cookiesOf(asked).join('; ') },
    body: new URLSearchParams({ email, password, csrfToken, json: 'true' }),
  })
  await answered.arrayBuffer()
  const session = cookiesOf(answered).find((cookie) => cookie.startsWith('__Host-evendough.session='))
  if (!session) throw new Error(`The demo's owner was not let in (status ${answered.status})`)
  return {
    async openPage(address) {
      const response = await fetch(`${url}${address}`, { redirect: 'manual', headers: { Cookie: session } })
      const html = await response.text()
      return response.status === 200 ? html : null
    },
  }
}
