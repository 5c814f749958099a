import program from 'zxing-wasm/reader/zxing_reader.wasm'
import { prepareReader, readPicture } from './read-picture'

/** The reader that comes with this page, once its program is there: a file of the bundle, which the worker keeps. */
export async function bundledReader(): Promise<typeof readPicture> {
  await prepareReader({ locateFile: () => program })
  return readPicture
}
