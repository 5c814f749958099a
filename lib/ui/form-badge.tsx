'use client'

import { use } from 'react'
import type { Words } from '../words/words'
import { say } from '../words/say'
import { ActionFormContext } from './action-form-context'
import { DraftOwnerContext } from './draft-owner'
import { PrintButton } from './print-button'
import { ScanPicture } from './scan-picture'
import { squaresOfText } from './squares-text'

export type FormBadgeProps = {
  words: Words['people']['badge']
  /** Whose it is, and of which bakery. */
  name: string
  bakeryName: string
  caution: string
}

/** Shows the badge that a form brought, once, as large as a bank card; printed, it stands alone on the page. */
export function FormBadge({ words, name, bakeryName, caution }: FormBadgeProps) {
  const { state } = use(ActionFormContext)
  const language = use(DraftOwnerContext)?.language ?? 'en'
  const scan = state.done?.scan
  if (!scan) return null
  return (
    <div role="status" className="my-5">
      <p className="mb-3 max-w-measure print:hidden">{caution}</p>
      <div className="print-alone flex min-h-[54mm] w-[86mm] max-w-full items-center gap-3 rounded-lg border border-scan-mark bg-scan-ground p-2 text-scan-mark">
        <div className="w-[40mm] shrink-0">
          <ScanPicture rows={squaresOfText(scan)} label={say(words.picture, language, { name })} />
        </div>
        <div className="min-w-0 flex-1">
          <p className="text-small">{bakeryName}</p>
          <p className="text-lead font-bold break-words">{name}</p>
          <p className="mt-2 text-small">{words.what}</p>
          <p className="text-small">{words.lost}</p>
        </div>
      </div>
      <div className="mt-3">
        <PrintButton>{words.print}</PrintButton>
      </div>
    </div>
  )
}
