import { randomUUID } from 'node:crypto'
import fs from 'node:fs'
import { z } from 'zod'
import { db } from '../db/client'
import { writePrivateFile } from './secrets'

const mark = z.strictObject({ id: z.uuid(), starts: z.int().min(1) })
type Mark = z.output<typeof mark>

/**
 * Counts a start, in the database and in a file that does not go with it. Where the two did not agree, the database was
 * put back from a copy: then the install gets another epoch, and tablets give back what it lacks.
 * @param isNew whether the database was made by this start: a file that is there is another one's
 * @returns what is to be said of it; nothing on every other day
 */
export async function noteStart(file: string, isNew: boolean): Promise<string[]> {
  const noted = isNew ? null : readMark(file)
  const { id, starts } = noted && noted !== 'damaged' ? noted : { id: randomUUID(), starts: 0 }
  const known = (await db().startMark.findUnique({ where: { id } }))?.starts ?? 0
  const isPutBack = noted === 'damaged' || known !== starts
  // First, so that a start that ends in between is counted as one that finds them apart.
  if (isPutBack) await db().install.update({ where: { id: 1 }, data: { epoch: randomUUID() } })
  const next: Mark = { id, starts: Math.max(known, starts) + 1 }
  await db().startMark.upsert({ where: { id }, create: next, update: next })
  return [
    ...(isPutBack
      ? [
          `The database is not the one that was started last with ${file}: it was put back from a copy. Tablets give back what it lacks.`,
        ]
      : []),
    ...writeMark(file, next),
  ]
}

function readMark(file: string): Mark | 'damaged' | null {
  let text: string
  try {
    text = fs.readFileSync(file, 'utf8')
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'ENOENT' ? null : 'damaged'
  }
  try {
    return mark.parse(JSON.parse(text))
  } catch {
    return 'damaged'
  }
}

/** A start without it is no worse than one before it was counted, so it goes on. */
function writeMark(file: string, next: Mark): string[] {
  try {
    writePrivateFile(file, JSON.stringify(next))
    return []
  } catch (error) {
    return [
      `${file} cannot be written (${(error as NodeJS.ErrnoException).code}), so a database that is put back from a copy may not be noticed. Choose another place: EVENDOUGH_STARTS=… npm start`,
    ]
  }
}
