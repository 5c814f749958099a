import type { Answer } from '../outbox/judge-answer'

const patienceMs = 20_000

/**
 * Asks the book, or tells it something; null where nothing came back that it could have said.
 * @param q.once names what is asked for: asked again under the same name, it is done once
 */
export async function askBook(
  address: string,
  { token, body, once }: { token?: string | null; body?: object; once?: string } = {},
): Promise<Answer> {
  try {
    const response = await fetch(address, {
      method: body ? 'POST' : 'GET',
      cache: 'no-store',
      redirect: 'error',
      signal: AbortSignal.timeout(patienceMs),
      headers: {
        ...(body ? { 'Content-Type': 'application/json' } : {}),
        // Without it the desk would take what a tablet sends for its own.
        'Evendough-Shift': token ?? '',
        ...(once === undefined ? {} : { 'Evendough-Once': once }),
      },
      ...(body ? { body: JSON.stringify(body) } : {}),
    })
    return { status: response.status, body: (await response.json()) as unknown }
  } catch {
    // No network, no patience left, or a page where JSON was asked for.
    return null
  }
}

/** The refusal that the book gave; null for an answer that is none. */
export function refusalIn(answer: Answer): { code: string; words: string | null } | null {
  const body = answer?.body as { refusal?: unknown; words?: unknown } | null | undefined
  return typeof body?.refusal === 'string'
    ? { code: body.refusal, words: typeof body.words === 'string' ? body.words : null }
    : null
}
