import { z } from 'zod'
import { line, typedMoment } from '../../text.input'

/** What a sheet of paper says of one dough, as somebody puts it into the book later. */
export const keyInSheetInput = z.strictObject({
  batchId: z.uuid(),
  /** Who wrote it, which may be somebody else. */
  writtenById: z.uuid(),
  /** When it was written, as the paper says. */
  writtenAt: typedMoment,
  lines: z
    .array(
      z.strictObject({
        measureId: z.uuid(),
        /** From 1; null for the whole dough. */
        piece: z.int().min(1).max(10_000).nullable(),
        factorLevel: line(80).nullable(),
        repeat: z.int().min(1).max(20),
        unit: line(20),
        /** As it is written; null where the paper says nothing. */
        value: line(40).nullable(),
      }),
    )
    .min(1)
    .max(2000),
  /** Somebody looked again at values outside what is usual. */
  confirmed: z.boolean(),
})
