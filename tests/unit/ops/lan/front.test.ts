import http from 'node:http'
import http2 from 'node:http2'
import https from 'node:https'
import net, { type AddressInfo } from 'node:net'
import tls from 'node:tls'
import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest'
import { findFreePort } from '../../../../lib/ops/find-free-port'
import { makeAuthority, type Authority } from '../../../../lib/ops/lan/authority'
import { openFront, type Front, type Patience } from '../../../../lib/ops/lan/front'
import { mostBodyBytes } from '../../../../lib/ops/lan/request-fault'
import { certify } from '../../../../lib/ops/lan/server-certificate'

const name = 'bench.test'
const now = new Date()
const sentences = { 400: 'odd', 408: 'slow', 413: 'large', 421: 'elsewhere', 502: 'away' }

/** What the app stands in for: what it was asked last, and how it answers. */
let asked: http.IncomingMessage[] = []
let bodies: string[] = []
let answerWith: (request: http.IncomingMessage, response: http.ServerResponse) => void
const app = http.createServer({ maxHeaderSize: 262_144 }, (request, response) => {
  asked.push(request)
  answerWith(request, response)
})

let authority: Authority
let front: Front
let port: number

const open = async (appPort: number, patience?: Patience) => {
  const at = { address: '127.0.0.1', port: await findFreePort() }
  const host = `${name}:${at.port}`
  const place = { host, otherHosts: [`127.0.0.1:${at.port}`], origin: `https://${host}` }
  const opened = await openFront(
    at,
    await certify(authority, ['127.0.0.1'], now),
    { place, appPort, secret: 'of this start', sentences },
    patience,
  )
  return { front: opened, port: at.port }
}
const appPort = () => (app.address() as AddressInfo).port

beforeAll(async () => {
  await new Promise<void>((resolve) => app.listen(0, '127.0.0.1', resolve))
  authority = await makeAuthority(name, ['127.0.0.0/8'], now)
  ;({ front, port } = await open(appPort()))
})
afterAll(async () => {
  await front.close()
  app.closeAllConnections()
  app.close()
})
beforeEach(() => {
  asked = []
  bodies = []
  answerWith = (request, response) => {
    let body = ''
    request.on('data', (chunk: Buffer) => (body += chunk.toString()))
    request.on('end', () => {
      bodies.push(body)
      response.writeHead(
        200,
        [
          ['Set-Cookie', 'a=1'],
          ['Set-Cookie', 'b=2'],
          ['Keep-Alive', 'timeout=5'],
          ['X-Of-App', 'yes'],
        ].flat(),
      )
      response.end('answered')
    })
  }
})

type Answered = { status: number; headers: http.IncomingHttpHeaders | http2.IncomingHttpHeaders; body: string }
type Ask = { method?: string; path?: string; host?: string; headers?: http2.OutgoingHttpHeaders; body?: string }

/** Asks in HTTP/1.1, as somebody who trusts the authority. */
function byHttp1({ method = 'GET', path = '/', host = `${name}:${port}`, headers = {}, body }: Ask): Promise<Answered> {
  return new Promise((resolve, reject) => {
    const request = https.request(
      {
        host: '127.0.0.1',
        port,
        servername: name,
        ca: authority.certificate,
        method,
        path,
        headers: { host, ...headers },
        agent: false,
      },
      (response) => {
        let text = ''
        response.on('data', (chunk: Buffer) => (text += chunk.toString()))
        response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, body: text }))
        response.on('error', reject)
      },
    )
    request.on('error', reject)
    request.end(body)
  })
}

const connect2 = (to = port) =>
  http2.connect(`https://127.0.0.1:${to}`, {
    servername: name,
    ca: authority.certificate,
    maxSendHeaderBlockLength: 262_144,
  })

/** Asks in HTTP/2, as somebody who trusts the authority. */
async function byHttp2(ask: Ask, to = port): Promise<Answered> {
  const session = connect2(to)
  try {
    return await askIn(session, ask)
  } finally {
    session.close()
  }
}

function askIn(
  session: http2.ClientHttp2Session,
  { method = 'GET', path = '/', host = `${name}:${port}`, headers = {}, body }: Ask,
): Promise<Answered> {
  return new Promise((resolve, reject) => {
    session.on('error', reject)
    const stream = session.request(
      { ':method': method, ':path': path, ':authority': host, ...headers },
      { endStream: body === undefined },
    )
    let text = ''
    let got: http2.IncomingHttpHeaders = {}
    stream.on('response', (head) => (got = head))
    stream.on('data', (chunk: Buffer) => (text += chunk.toString()))
    stream.on('end', () => resolve({ status: Number(got[':status']), headers: got, body: text }))
    stream.on('error', reject)
    if (body !== undefined) stream.end(body)
  })
}

const both = [
  ['HTTP/1.1', byHttp1],
  ['HTTP/2', byHttp2],
] as const

/** Says bytes over TLS, and gives what comes back until the other side ends. */
function sayRaw(text: string): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = tls.connect({
      host: '127.0.0.1',
      port,
      servername: name,
      ca: authority.certificate,
      ALPNProtocols: ['http/1.1'],
    })
    let heard = ''
    socket.on('secureConnect', () => socket.write(text))
    socket.on('data', (chunk: Buffer) => (heard += chunk.toString()))
    socket.on('close', () => resolve(heard))
    socket.on('error', reject)
  })
}

it.each(both)('%s: hands question and answer on, without what was only for the connection', async (_, ask) => {
  const answered = await ask({ method: 'POST', path: '/trials?after=1', body: 'flour', headers: { 'x-own': 'kept' } })
  expect(answered).toMatchObject({ status: 200, body: 'answered' })
  expect(answered.headers['set-cookie']).toEqual(['a=1', 'b=2'])
  expect(answered.headers['x-of-app']).toBe('yes')
  expect(answered.headers['keep-alive']).not.toBe('timeout=5')
  expect(asked[0]).toMatchObject({ method: 'POST', url: '/trials?after=1' })
  expect(asked[0]?.headers).toMatchObject({ host: `${name}:${port}`, 'x-own': 'kept', connection: 'close' })
  expect(bodies).toEqual(['flour'])
})

it.each(both)('%s: says itself who asked, whatever was said of that before', async (_, ask) => {
  await ask({
    headers: {
      forwarded: 'for=9.9.9.9',
      'x-forwarded-for': '9.9.9.9',
      'x-forwarded-host': 'other.example',
      'x-forwarded-port': '80',
      x_forwarded_for: '9.9.9.9',
      'x-real-ip': '9.9.9.9',
      'x-evendough-front': 'guessed',
      'x-middleware-subrequest': 'proxy',
    },
  })
  const headers = asked[0]?.headers
  expect(headers).toMatchObject({
    'x-forwarded-for': '127.0.0.1',
    'x-forwarded-host': `${name}:${port}`,
    'x-forwarded-proto': 'https',
    'x-evendough-front': 'of this start',
  })
  expect(JSON.stringify(asked[0]?.rawHeaders)).not.toMatch(/9\.9\.9\.9|other\.example|guessed|proxy/)
  expect(Object.keys(headers ?? {})).not.toContain('x-forwarded-port')
})

it.each(both)('%s: an answer comes piece by piece, none held back for the next', async (_, ask) => {
  // The next piece is sent only when the former one has arrived, so holding one back would never end.
  let more: (() => void) | undefined
  answerWith = (_request, response) => {
    response.writeHead(200, { 'content-type': 'text/event-stream' })
    response.flushHeaders()
    const pieces = ['one', 'two', 'three']
    more = () => {
      const piece = pieces.shift()
      if (piece) response.write(piece)
      else response.end()
    }
  }
  const heard: string[] = []
  const take = (chunk: Buffer) => {
    heard.push(chunk.toString())
    more?.()
  }
  if (ask === byHttp1) {
    await new Promise<void>((resolve, reject) => {
      const request = https.get(
        {
          host: '127.0.0.1',
          port,
          servername: name,
          ca: authority.certificate,
          agent: false,
          headers: { host: `${name}:${port}` },
        },
        (response) => {
          more?.()
          response.on('data', take)
          response.on('end', resolve)
        },
      )
      request.on('error', reject)
    })
  } else {
    const session = connect2()
    await new Promise<void>((resolve, reject) => {
      const stream = session.request({ ':path': '/', ':authority': `${name}:${port}` })
      stream.on('response', () => more?.())
      stream.on('data', take)
      stream.on('end', resolve)
      stream.on('error', reject)
    })
    session.close()
  }
  expect(heard).toEqual(['one', 'two', 'three'])
})

it.each(both)('%s: takes an address that holds the whole question of a calculation', async (_, ask) => {
  const path = `/calculators?q=${'a'.repeat(100_000)}`
  expect((await ask({ path })).status).toBe(200)
  expect(asked[0]?.url).toHaveLength(path.length)
})

it.each(both)('%s: a body beyond the bound is refused, also one that says nothing of its length', async (_, ask) => {
  const large = 'x'.repeat(mostBodyBytes + 1)
  const said = ask === byHttp1 ? { 'content-length': String(large.length) } : {}
  const refused = await ask({ method: 'POST', headers: said, body: large }).catch(
    (error: unknown) => error as NodeJS.ErrnoException,
  )
  // HTTP/1.1 has no way to say no in the middle but to hang up; whether the answer is read before is a matter of luck.
  if (refused instanceof Error) expect(['ECONNRESET', 'EPIPE']).toContain(refused.code)
  else expect(refused.status).toBe(413)
  expect(bodies).toEqual([])
  const chunked = await ask({
    method: 'POST',
    headers: ask === byHttp1 ? { 'transfer-encoding': 'chunked' } : {},
    body: 'rye',
  })
  expect(chunked.status).toBe(200)
  expect(bodies).toEqual(['rye'])
})

it.each(both)('%s: is there under its name alone; by an address it leads there, and nowhere else', async (_, ask) => {
  expect((await ask({ host: `other.example:${port}` })).status).toBe(421)
  expect((await ask({ host: name })).status).toBe(421)
  expect((await ask({ host: `${name}.:${port}` })).status).toBe(421)
  expect((await ask({ host: `BENCH.test:${port}` })).status).toBe(200)
  const led = await ask({ host: `127.0.0.1:${port}`, path: '/shift?day=1' })
  expect(led).toMatchObject({ status: 307, headers: { location: `https://${name}:${port}/shift?day=1` } })
  expect((await ask({ host: `127.0.0.1:${port}`, method: 'POST', body: 'x' })).status).toBe(421)
  expect(asked).toHaveLength(1)
})

it('HTTP/2 whose Host says another name than its authority is refused', async () => {
  expect((await byHttp2({ headers: { host: 'other.example' } })).status).toBe(400)
  expect(asked).toEqual([])
})

it('HTTP/2 cookies that come in pieces go on as one', async () => {
  await byHttp2({ headers: { cookie: ['a=1', 'b=2'] } })
  expect(asked[0]?.headers.cookie).toBe('a=1; b=2')
})

const head = (lines: readonly string[]) => [...lines, '', ''].join('\r\n')
it.each([
  ['a length beside chunks', ['POST / HTTP/1.1', 'Host: {host}', 'Content-Length: 4', 'Transfer-Encoding: chunked']],
  ['two lengths', ['POST / HTTP/1.1', 'Host: {host}', 'Content-Length: 4', 'Content-Length: 5']],
  ['a length with a sign', ['POST / HTTP/1.1', 'Host: {host}', 'Content-Length: +4']],
  ['an unknown coding', ['POST / HTTP/1.1', 'Host: {host}', 'Transfer-Encoding: gzip, chunked']],
  ['a coding twice', ['POST / HTTP/1.1', 'Host: {host}', 'Transfer-Encoding: chunked', 'Transfer-Encoding: chunked']],
  ['a coding with a tab', ['POST / HTTP/1.1', 'Host: {host}', 'Transfer-Encoding:\x0bchunked']],
  ['a blank before the colon', ['POST / HTTP/1.1', 'Host: {host}', 'Transfer-Encoding : chunked']],
  ['a folded header', ['GET / HTTP/1.1', 'Host: {host}', 'X-One: a', ' Transfer-Encoding: chunked']],
  ['two hosts', ['GET / HTTP/1.1', 'Host: {host}', 'Host: other.example']],
  ['the same host twice', ['GET / HTTP/1.1', 'Host: {host}', 'Host: {host}']],
  ['no host', ['GET / HTTP/1.1']],
  ['a whole address', ['GET https://other.example/ HTTP/1.1', 'Host: {host}']],
  ['a star', ['OPTIONS * HTTP/1.1', 'Host: {host}']],
  ['a tunnel', ['CONNECT other.example:443 HTTP/1.1', 'Host: {host}']],
])('a request with %s is refused and never reaches the app', async (_, lines) => {
  const said = await sayRaw(head(lines.map((line) => line.replace('{host}', `${name}:${port}`))))
  expect(said).toMatch(/^(HTTP\/1\.1 400 |$)/)
  expect(asked).toEqual([])
})

it('what Connection names stays here', async () => {
  await sayRaw(
    head([
      'GET / HTTP/1.1',
      `Host: ${name}:${port}`,
      'X-Hop: no',
      'X-Own: yes',
      'Connection: close, X-Hop',
      'Upgrade: websocket',
    ]),
  )
  expect(asked[0]?.headers).toMatchObject({ 'x-own': 'yes' })
  expect(Object.keys(asked[0]?.headers ?? {})).not.toEqual(expect.arrayContaining(['x-hop']))
  expect(Object.keys(asked[0]?.headers ?? {})).not.toEqual(expect.arrayContaining(['upgrade']))
})

const long: Patience = { handshakeMs: 60_000, headersMs: 60_000, bodyMs: 60_000, idleMs: 60_000 }

it.each(both)('%s: a request that does not come to its end in time is given up', async (_, ask) => {
  const quick = await open(appPort(), { ...long, bodyMs: 100 })
  const host = `${name}:${quick.port}`
  const status = await new Promise<number>((resolve, reject) => {
    if (ask === byHttp2) {
      const session = connect2(quick.port)
      const stream = session.request({ ':method': 'POST', ':path': '/', ':authority': host })
      stream.on('response', (headers) => {
        resolve(Number(headers[':status']))
        session.destroy()
      })
      stream.on('error', reject)
      stream.write('begun')
    } else {
      const to = { host: '127.0.0.1', port: quick.port, servername: name, ca: authority.certificate, agent: false }
      const request = https.request({ ...to, method: 'POST', headers: { host } }, (response) => {
        resolve(response.statusCode ?? 0)
        request.destroy()
      })
      request.on('error', reject)
      request.write('begun')
    }
  })
  expect(status).toBe(408)
  await quick.front.close()
  expect(bodies).toEqual([])
})

it.each<[string, Partial<Patience>, string | null, string]>([
  ['never says a word of TLS', { handshakeMs: 100 }, null, ''],
  ['says its headers letter by letter, HTTP/1.1', { headersMs: 100 }, 'http/1.1', 'GET / HTTP/1.1\r\nHost: '],
  ['says nothing, HTTP/1.1', { idleMs: 100 }, 'http/1.1', ''],
  ['says nothing, HTTP/2', { idleMs: 100 }, 'h2', ''],
])('a connection that %s is ended', async (_, short, protocol, said) => {
  const quick = await open(appPort(), { ...long, ...short })
  const at = { host: '127.0.0.1', port: quick.port }
  const socket =
    protocol === null
      ? net.connect(at)
      : tls.connect({ ...at, servername: name, ca: authority.certificate, ALPNProtocols: [protocol] })
  socket.on('error', () => undefined)
  socket.on(protocol === null ? 'connect' : 'secureConnect', () => said && socket.write(said))
  socket.resume()
  await new Promise((resolve) => socket.on('close', resolve))
  expect(asked).toEqual([])
  await quick.front.close()
})

it.each(both)('%s: whoever leaves takes the work at the app with them', async (_, ask) => {
  const left = new Promise<void>((resolve) => {
    answerWith = (request, response) => {
      request.resume()
      response.on('close', resolve)
      response.writeHead(200)
      response.write('begun')
    }
  })
  if (ask === byHttp1) {
    const request = https.get(
      {
        host: '127.0.0.1',
        port,
        servername: name,
        ca: authority.certificate,
        agent: false,
        headers: { host: `${name}:${port}` },
      },
      (response) => response.once('data', () => request.destroy()),
    )
    request.on('error', () => undefined)
    await left
  } else {
    const session = connect2()
    const stream = session.request({ ':path': '/', ':authority': `${name}:${port}` })
    stream.once('data', () => stream.close(http2.constants.NGHTTP2_CANCEL))
    stream.on('error', () => undefined)
    await left
    session.destroy()
  }
})

it.each(both)('%s: an answer that breaks off is no whole answer', async (_, ask) => {
  answerWith = (_request, response) => {
    response.writeHead(200, { 'content-length': '100' })
    response.write('begun', () => response.destroy())
  }
  await expect(ask({})).rejects.toThrow()
})

it('says so where the app is away', async () => {
  const alone = await open(await findFreePort())
  expect(await byHttp2({ host: `${name}:${alone.port}` }, alone.port)).toMatchObject({ status: 502, body: 'away\n' })
  await alone.front.close()
})

it('shows a new certificate to whoever connects after it was made, and whoever does not trust the authority gets nothing', async () => {
  const serial = () =>
    new Promise<string>((resolve, reject) => {
      const socket = tls.connect({ host: '127.0.0.1', port, servername: name, ca: authority.certificate })
      socket.on('secureConnect', () => {
        resolve(socket.getPeerCertificate().serialNumber)
        socket.destroy()
      })
      socket.on('error', reject)
    })
  const before = await serial()
  expect(await serial()).toBe(before)
  front.show(await certify(authority, ['127.0.0.1'], now))
  expect(await serial()).not.toBe(before)
  const stranger = https.get({ host: '127.0.0.1', port, servername: name, headers: { host: `${name}:${port}` } })
  await expect(
    new Promise((resolve, reject) => stranger.on('response', resolve).on('error', reject)),
  ).rejects.toMatchObject({ code: expect.stringMatching(/SELF_SIGNED|UNABLE_TO/) })
  expect(asked).toEqual([])
})

it.each(both)('%s: a large answer comes whole', async (_, ask) => {
  const large = 'rye and wheat '.repeat(600_000)
  answerWith = (_request, response) => void response.end(large)
  expect((await ask({})).body === large).toBe(true)
})

it.each([
  ['plain http', (socket: net.Socket) => socket.end('GET / HTTP/1.1\r\nHost: x\r\n\r\n')],
  ['noise', (socket: net.Socket) => socket.end(Buffer.alloc(4_096, 7))],
  [
    'a hang-up in the greeting',
    (socket: net.Socket) => socket.write(Buffer.from('160301', 'hex'), () => socket.resetAndDestroy()),
  ],
])('%s in place of TLS ends that connection alone', async (_, say) => {
  const socket = net.connect(port, '127.0.0.1')
  socket.on('error', () => undefined)
  socket.on('connect', () => say(socket))
  await new Promise((resolve) => socket.on('close', resolve))
  expect((await byHttp2({})).status).toBe(200)
})

it('noise in place of HTTP/2 ends that connection alone', async () => {
  const socket = tls.connect({
    host: '127.0.0.1',
    port,
    servername: name,
    ca: authority.certificate,
    ALPNProtocols: ['h2'],
  })
  socket.on('error', () => undefined)
  socket.on('secureConnect', () => socket.write('PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n' + '\xff'.repeat(4_096)))
  socket.resume()
  await new Promise((resolve) => socket.on('close', resolve))
  expect((await byHttp2({})).status).toBe(200)
})

it('ends cleanly with an answer under way', async () => {
  answerWith = (_request, response) => {
    response.writeHead(200, { 'content-type': 'text/event-stream' })
    response.flushHeaders()
  }
  const one = await open(appPort())
  const session = connect2(one.port)
  session.on('error', () => undefined)
  const stream = session.request({ ':path': '/', ':authority': `${name}:${one.port}` })
  stream.on('error', () => undefined)
  await new Promise((resolve) => stream.on('response', resolve))
  await one.front.close()
  await expect(byHttp2({}, one.port)).rejects.toThrow(/ECONNREFUSED/)
})
