import 'server-only'
import { z } from 'zod'

/** Connections of one process; times the processes it must stay below the server's own limit. */
export const poolSize = z.coerce.number().int().min(2).max(100).default(10)

/** For the photos of each bakery, in GB. */
export const photoRoom = z.coerce.number().positive({ error: 'must be a number above 0' }).default(20)

const settingsSchema = z.object({
  DATABASE_URL: z.string().regex(/^postgres(ql)?:\/\//, 'must begin with postgresql://'),
  EVENDOUGH_POOL: poolSize,
})

const anchors = z.object({ EVENDOUGH_ANCHORS: z.string().min(1).optional() })

/** The file, outside the database, that says each day where the records stand; null where the start named none. */
export function anchorsFile(): string | null {
  return anchors.parse(process.env).EVENDOUGH_ANCHORS ?? null
}

const photos = z.object({ EVENDOUGH_PHOTOS_GB: photoRoom })

/** How many bytes the photos of one bakery may take. */
export function photoRoomBytes(): number {
  return photos.parse(process.env).EVENDOUGH_PHOTOS_GB * 1024 ** 3
}

/** The database's settings, read from the environment. @throws Error that names the setting at fault */
export function databaseSettings(): { url: string; pool: number } {
  const read = settingsSchema.safeParse(process.env)
  if (!read.success)
    throw new Error(read.error.issues.map((issue) => `${issue.path.join('.')}: ${issue.message}`).join('; '))
  return { url: read.data.DATABASE_URL, pool: read.data.EVENDOUGH_POOL }
}
