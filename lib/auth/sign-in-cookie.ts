import 'server-only'
import type { NextAuthOptions } from 'next-auth'
import { decode, encode } from 'next-auth/jwt'
import Credentials from 'next-auth/providers/credentials'
import { addressOf } from './address-of'
import { authSecret } from './auth-secret'
import { sessionLongestMs } from './session-life'

export const sessionCookie = '__Host-evendough.session'

type Settings = {
  /** Opens a session for what was typed, or answers null. */
  openSession(
    typed: { email: string; password: string },
    from: { device: string; address: string },
  ): Promise<string | null>
}

/**
 * next-auth, with a token that holds a session's secret and nothing else: who that is, and whether they still may,
 * is looked up at every request. The secret is kept out of what next-auth tells the browser's scripts.
 */
export function nextAuthOptions(settings: Settings): NextAuthOptions {
  const secret = authSecret()
  const cookie = (name: string) => ({
    name,
    options: { httpOnly: true, secure: true, sameSite: 'lax' as const, path: '/' },
  })
  return {
    secret,
    session: { strategy: 'jwt', maxAge: sessionLongestMs / 1000 },
    cookies: {
      sessionToken: cookie(sessionCookie),
      csrfToken: cookie('__Host-evendough.csrf'),
      callbackUrl: cookie('__Host-evendough.callback'),
    },
    pages: { signIn: '/sign-in', error: '/sign-in', signOut: '/sign-in' },
    providers: [
      Credentials({
        credentials: { email: {}, password: {} },
        async authorize(typed, request) {
          const from = {
            device: String(request.headers?.['user-agent'] ?? ''),
            address: addressOf((name) => headerOf(request.headers, name)),
          }
          const opened = await settings.openSession(
            { email: typed?.email ?? '', password: typed?.password ?? '' },
            from,
          )
          return opened ? { id: opened } : null
        },
      }),
    ],
    callbacks: {
      jwt: ({ token, user }) =>
        user
          ? { secret: user.id, endsAt: Date.now() + sessionLongestMs }
          : { secret: token.secret, endsAt: token.endsAt },
      session: ({ session }) => ({ expires: session.expires }),
      redirect: ({ url, baseUrl }) => (url.startsWith('/') && !url.startsWith('//') ? `${baseUrl}${url}` : baseUrl),
    },
    jwt: {
      // The token never outlives the session's row, however often it is written anew.
      encode: ({ token, secret: key }) =>
        encode({
          token,
          secret: key,
          maxAge: Math.max(1, Math.floor((Number(token?.endsAt ?? 0) - Date.now()) / 1000)),
        }),
    },
    logger: { error: () => undefined, warn: () => undefined, debug: () => undefined },
  }
}

/** The session's secret out of the cookie's value, or null when it is missing, forged or over. */
export async function readSessionSecret(cookieValue: string | undefined): Promise<string | null> {
  if (!cookieValue) return null
  try {
    const token = await decode({ token: cookieValue, secret: authSecret() })
    return typeof token?.secret === 'string' ? token.secret : null
  } catch {
    // A token of another key or another form is no token.
    return null
  }
}

/** A session's secret as the cookie that carries it, for those who join by a link. */
export function makeSessionToken(sessionSecret: string): Promise<string> {
  return encode({
    token: { secret: sessionSecret, endsAt: Date.now() + sessionLongestMs },
    secret: authSecret(),
    maxAge: sessionLongestMs / 1000,
  })
}

function headerOf(headers: Record<string, unknown> | undefined, name: string): string | undefined {
  const value = headers?.[name]
  return typeof value === 'string' ? value : undefined
}
