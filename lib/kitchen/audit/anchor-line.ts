import 'server-only'
import { z } from 'zod'
import { instant } from '../text.input'

/** Where a bakery's record stood at a moment. */
export type Anchor = { bakery: string; at: string; number: number; hash: string }

const line = z.strictObject({
  bakery: z.uuid(),
  at: instant,
  number: z.int().min(1),
  hash: z.string().regex(/^[0-9a-f]{64}$/),
})

/** One line of the file of anchors, without its end. */
export function textOfAnchor({ bakery, at, number, hash }: Anchor): string {
  return JSON.stringify({ bakery, at, number, hash })
}

/** What a line of the file says; null where it is none, such as one that a crash cut off. */
export function readAnchorLine(text: string): Anchor | null {
  try {
    return line.safeParse(JSON.parse(text)).data ?? null
  } catch (error) {
    if (error instanceof SyntaxError) return null
    throw error
  }
}
