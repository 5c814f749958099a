import { gzipSync } from 'node:zlib'
import { build } from 'esbuild'

/**
 * Size of the script that a page would load to use all of these files: bundled with what they import, minified, and
 * compressed with gzip.
 * @returns kB (1000 bytes)
 */
export async function bundleSizeKb(files: readonly string[], folder: string): Promise<number> {
  const contents = files.map((file, i) => `export * as of${i} from ${JSON.stringify(file)}`).join('\n')
  const { outputFiles } = await build({
    stdin: { contents, resolveDir: folder, loader: 'ts' },
    bundle: true,
    minify: true,
    write: false,
    format: 'esm',
    platform: 'browser',
    logLevel: 'silent',
  })
  return gzipSync(outputFiles[0]?.contents ?? '').length / 1000
}
