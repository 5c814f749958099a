import { Cell } from '@/lib/ui/cell'
import { SheetTable } from '@/lib/ui/sheet-table'
import { formatDate, formatDateTime, type DateForm } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import type { VersionSeen } from './version-seen'

type SignaturesProps = {
  version: Pick<VersionSeen, 'signatures' | 'draftedBy' | 'createdAt' | 'contentHash' | 'signedAt'>
  words: Words
  bakery: DateForm
  language: Language
}

/** Who drafted and who signed, in the words that were shown, and the seal of what was signed. */
export function Signatures({ version, words, bakery, language }: SignaturesProps) {
  const { sheet, history } = words.formulas
  // One of two signatures may be the drafter's; only alone does it mean that nobody else looked.
  const isAlone = version.signedAt !== null && version.signatures.length === 1
  return (
    <>
      <p className="mb-3">
        {say(sheet.draftedBy, language, { name: version.draftedBy, at: formatDate(version.createdAt, bakery) })}
      </p>
      {version.signatures.length === 0 ? (
        <p>{sheet.noSignatures}</p>
      ) : (
        <SheetTable
          caption={sheet.signatures}
          captionHidden
          columns={[
            { key: 'who', label: sheet.who },
            { key: 'when', label: sheet.when },
            { key: 'meaning', label: sheet.meaning },
          ]}
        >
          {version.signatures.map((signature) => (
            <tr key={signature.at.toISOString()}>
              <Cell head>
                {signature.personName}, {words.desk.roles[signature.role]}
              </Cell>
              <Cell whole>{formatDateTime(signature.at, bakery)}</Cell>
              <Cell>
                {signature.meaning}
                {signature.byProposer ? (
                  <span className="block text-small text-ink-2">
                    {isAlone ? history.byProposer : history.byDrafter}
                  </span>
                ) : null}
              </Cell>
            </tr>
          ))}
        </SheetTable>
      )}
      {version.signedAt ? (
        <p className="mt-3 text-small text-ink-2">
          {sheet.seal} <span className="break-all select-all">{version.contentHash}</span>
        </p>
      ) : null}
    </>
  )
}
