import type { z } from 'zod'
import { countOfPieces, pieceHashHeader } from '../../kitchen/photos/photo-limits.input'
import type { sendPhotoInput } from '../../kitchen/photos/send-photo.input'
import { hashOfBytes } from '../keep/hash-of'

export type SaidPhoto = z.input<typeof sendPhotoInput>

export type PhotoSent =
  /** In the book: it named the photo's own hash. */
  | { outcome: 'kept' }
  /** The book said no, and keeps none of it. */
  | { outcome: 'refused'; refusal: string; words: string | null }
  /** The book wants to know who this is. */
  | { outcome: 'who'; words: string | null }
  /** Not all of it is there: the same is to be sent again, and goes on from there. */
  | { outcome: 'again'; words: string | null }
  /** Somebody asked it to, in the middle; it goes on from there. */
  | { outcome: 'stopped'; words: null }

type Asked = {
  photo: SaidPhoto
  /** A piece of it, from 0; undefined where it is not there any more. */
  pieceOf(number: number): Promise<Uint8Array<ArrayBuffer> | undefined>
  /** Of whoever is on a tablet; null at the desk. */
  token: string | null
  /** Told before each piece how many are there, of how many. */
  onPiece?(done: number, of: number): void
  /** Asked before each piece: it then goes on another time, from there. */
  isToStop?(): boolean
}
type Answer = { status: number; body: Record<string, unknown> } | null

const patienceMs = 60_000
/** What was lacking is asked for again this often, where the book lost some of it meanwhile. */
const mostRounds = 3

/** Sends a photo, from the desk or from a tablet: only those pieces that the book has not got, and it stops at the first that does not arrive. */
export async function sendInPieces({ photo, pieceOf, token, onPiece, isToStop }: Asked): Promise<PhotoSent> {
  for (let round = 0; round < mostRounds; round++) {
    const said = await ask('/api/v1/photos', token, 'POST', JSON.stringify(photo), {
      'Content-Type': 'application/json',
    })
    if (said?.status !== 200) return judge(said)
    if (said.body.outcome === 'kept') {
      // Anything else that answers 200 has not got it.
      return said.body.sentHash === photo.hash ? { outcome: 'kept' } : { outcome: 'again', words: null }
    }
    const lacking = Array.isArray(said.body.pieces) ? said.body.pieces.filter(Number.isInteger).map(Number) : []
    const of = countOfPieces(photo.bytes)
    for (const [at, number] of lacking.entries()) {
      if (isToStop?.()) return { outcome: 'stopped', words: null }
      onPiece?.(of - lacking.length + at, of)
      const piece = await pieceOf(number)
      if (!piece) return { outcome: 'refused', refusal: 'piece-gone', words: null }
      const hash = await hashOfBytes(piece)
      const put = await ask(`/api/v1/photos/${photo.id}/pieces/${number}`, token, 'PUT', piece, {
        'Content-Type': 'application/octet-stream',
        [pieceHashHeader]: hash,
      })
      if (put?.status !== 200) return judgePiece(put)
      if (put.body.hash !== hash) return { outcome: 'again', words: null }
    }
  }
  return { outcome: 'again', words: null }
}

/** Refusals of a piece after which the whole is said again. */
const passing = new Set(['not-found', 'photo-cut-off'])

/** A piece that got lost, or broke on its way, is asked for again. */
function judgePiece(answer: Answer): PhotoSent {
  const judged = judge(answer)
  return judged.outcome === 'refused' && passing.has(judged.refusal) ? { outcome: 'again', words: null } : judged
}

function judge(answer: Answer): PhotoSent {
  const words = typeof answer?.body.words === 'string' ? answer.body.words : null
  const refusal = answer?.body.refusal
  if (answer === null || answer.status >= 500 || answer.status === 429 || typeof refusal !== 'string')
    return { outcome: 'again', words }
  if (refusal === 'not-signed-in' || refusal === 'not-allowed') return { outcome: 'who', words }
  return { outcome: 'refused', refusal, words }
}

async function ask(
  address: string,
  token: string | null,
  method: 'POST' | 'PUT',
  body: string | Uint8Array<ArrayBuffer>,
  headers: Record<string, string>,
): Promise<Answer> {
  try {
    const response = await fetch(address, {
      method,
      body,
      cache: 'no-store',
      redirect: 'error',
      signal: AbortSignal.timeout(patienceMs),
      // Without it the desk would take what a tablet sends for its own.
      headers: token === null ? headers : { ...headers, 'Evendough-Shift': token },
    })
    const read = (await response.json()) as unknown
    return typeof read === 'object' && read !== null
      ? { status: response.status, body: read as Record<string, unknown> }
      : null
  } catch {
    // No network, no patience left, or a page where JSON was asked for.
    return null
  }
}
