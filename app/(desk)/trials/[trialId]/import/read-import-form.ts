import 'server-only'
import { textOf } from '@/lib/ui/text-of'

/** What a column is used for, as the list of a form sends it: `code`, or `measure:<id>:<unit>`. */
function useOf(text: string) {
  const [as, measureId, ...unit] = text.split(':')
  return as === 'measure' ? { as, measureId, unit: unit.join(':') } : { as }
}

/** More than a form may send; the command says how many are too many. */
const mostFields = 100

/** What was sent to be looked at or stored, for the query or the command to judge. */
export async function readImportForm(form: FormData, pastedName: string) {
  const chosen = form.get('file')
  const isFile = chosen instanceof File && chosen.size > 0
  const bytes = isFile ? new Uint8Array(await chosen.arrayBuffer()) : new TextEncoder().encode(textOf(form, 'text'))
  const fields = (name: string) =>
    Array.from({ length: mostFields }, (_, i) => `${name}.${i}`).filter((field) => form.has(field))
  const arms = fields('armTexts').flatMap((field, i) => {
    const arm = textOf(form, `arms.${i}`)
    return arm === '' ? [] : [{ text: textOf(form, field), arm: Number(arm) }]
  })
  return {
    look: {
      file: { name: isFile ? chosen.name.slice(-200) : pastedName, bytes },
      day: textOf(form, 'day') || null,
      keepOdd: form.has('keepOdd'),
      outside: form.has('outside')
        ? { cleanDownDone: form.has('cleanDownDone'), orderWhy: textOf(form, 'orderWhy').trim() || undefined }
        : null,
    },
    match: {
      separator: textOf(form, 'separator'),
      decimal: textOf(form, 'decimal'),
      columns: fields('columns').map((field) => useOf(textOf(form, field))),
      arms,
    },
    matched: textOf(form, 'matched'),
  }
}
