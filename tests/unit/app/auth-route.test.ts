import { expect, it } from 'vitest'
import { POST } from '@/app/api/auth/[...nextauth]/route'

const address = 'http://localhost:3000/api/auth'

it('reads no more than 16 kB', async () => {
  const request = new Request(`${address}/callback/credentials`, { method: 'POST', body: 'x'.repeat(16 * 1024 + 1) })
  expect((await POST(request, {})).status).toBe(413)
})

it('has no sign-out of the library’s own', async () => {
  const request = new Request(`${address}/signout`, { method: 'POST', body: '' })
  expect((await POST(request, {})).status).toBe(404)
})
