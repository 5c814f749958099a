import 'server-only'
import path from 'node:path'

/** Where the build has put the worker's file. @throws Error that names the setting at fault */
export function workerFile(): string {
  const file = process.env.EVENDOUGH_WORKER
  if (!file || !path.isAbsolute(file))
    throw new Error('EVENDOUGH_WORKER: must be the absolute path of the file of the workers, which the build writes')
  return file
}
