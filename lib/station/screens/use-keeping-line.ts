import { useState } from 'react'
import { stationMixing as words } from '../../words/en/station-mixing'
import type { KeptBy } from '../keep/keep-entry'
import { keepWeighing, lotsDraft, weighDraft, type NewWeighing } from '../keep/keep-weighing'
import { atDough, tablet } from '../keep/tablet'
import type { WeighList } from '../keep/weigh-facts'
import { lotsShown, type LotsChosen } from '../outbox/lots-of-line'
import { nextToWeigh } from '../outbox/next-to-weigh'
import { linesWithEntries, type StoodLine } from '../outbox/stand-of-line'
import { sendOutbox } from '../talk/send-outbox'
import { useGoOn } from '../ui/use-go-on'

/** Keeps what is said of a line, and opens the line that is to be weighed next. */
export function useKeepingLine(list: WeighList, line: StoodLine, by: KeptBy) {
  const [error, setError] = useState<string | null>(null)
  const goOn = useGoOn()
  const { batchId, code } = list
  const keep = async (what: Pick<NewWeighing, 'said' | 'confirmed' | 'wrong' | 'draft'>, chosen: LotsChosen) => {
    const shown = { code, line: line.name, lots: lotsShown(chosen, what.said.lots) }
    try {
      if (!(await keepWeighing({ ...what, batchId, line, by, shown }))) {
        setError(words.line.taken)
        return
      }
    } catch {
      setError(words.line.notKept)
      return
    }
    void sendOutbox()
    await tablet.drafts.delete(lotsDraft(what.draft))
    const next = nextToWeigh(linesWithEntries(list, await tablet.outbox.toArray()), line.key)
    await goOn(atDough(batchId, { weigh: next?.key ?? null }))
  }
  return { keep, error, draft: weighDraft(by.personId, batchId, line.key) }
}
