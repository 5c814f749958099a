import fs from 'node:fs'
import path from 'node:path'
import { catalogue } from '../../../calc/catalogue'
import { bundleSizeKb } from '../bundle-size'
import type { Subject } from '../subject'
import { setTable } from '../table'

const folder = path.resolve(import.meta.dirname, '..', '..', '..', 'calc')

/** How much script each subject of the calculations is: a page carries only those that it uses. */
export const library: Subject = {
  name: 'library',
  async measure() {
    const rows: string[][] = []
    for (const subject of fs
      .readdirSync(folder, { withFileTypes: true })
      .filter((each) => each.isDirectory())
      .map(({ name }) => name)
      .sort()) {
      const files = fs
        .readdirSync(path.join(folder, subject))
        .filter((file) => file.endsWith('.ts') && !file.endsWith('entries.ts'))
      const kb = await bundleSizeKb(
        files.map((file) => `./${subject}/${file}`),
        folder,
      )
      rows.push([
        subject,
        String(files.length),
        String(catalogue.filter(({ id }) => id.startsWith(`${subject}/`)).length),
        kb.toFixed(1),
      ])
    }
    return setTable({
      title: 'Library',
      notes: [
        'Script of all calculations of a subject with what they import, minified and compressed with gzip, kB (1000 bytes). The catalogue’s own shapes (zod) are not in it.',
      ],
      columns: ['subject', 'files', 'in the catalogue', 'kB'],
      rows,
    })
  },
}
