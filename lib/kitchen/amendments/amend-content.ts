import 'server-only'
import type { AmendmentContent } from '../../documents/amendment/text-of-amendment'
import { underWayStates } from '../batches/rules'
import type { TrialContent } from '../results/content-of-trial'
import { readingAtPlace, readingFor } from './reading-at-place'

/**
 * What was closed of a trial, with amendments put in, in their order; what was closed is not changed. Another value takes
 * the place of the one that holds there, one of an earlier amendment too; a reading that was missing makes a dough that
 * was under way a measured one; a dough that should not count is set aside.
 */
export function amendContent<Content extends TrialContent>(
  closed: Content,
  accepted: readonly AmendmentContent[],
): Content {
  return accepted.reduce(amendedBy, closed)
}

function amendedBy<Content extends TrialContent>(content: Content, amendment: AmendmentContent): Content {
  const { id, change, reason, by, at } = amendment
  if (change.kind === 'not-counted')
    return {
      ...content,
      doughs: content.doughs.map((dough) =>
        dough.id === change.dough.id ? { ...dough, state: 'set_aside', stateWhy: reason } : dough,
      ),
    }
  const { dough, measure, piece, factorLevel, repeat } = change
  const holding =
    readingAtPlace(content, { dough: dough.id, measure: measure.id, piece, factorLevel, repeat }) ??
    (change.old && readingFor(content, change.old.reading))
  return {
    ...content,
    doughs: content.doughs.map((each) =>
      each.id === dough.id && holding === null && isUnderWay(each.state) ? { ...each, state: 'measured' } : each,
    ),
    readings: [
      ...content.readings,
      {
        id,
        dough: dough.id,
        measure: measure.id,
        piece,
        factorLevel,
        repeat,
        ...change.new,
        by,
        takenAt: change.takenAt ?? holding?.takenAt ?? at,
        receivedAt: at,
        supersedes: holding?.id ?? null,
        reason,
        plausibleLeast: null,
        plausibleMost: null,
      },
    ],
  }
}

function isUnderWay(state: TrialContent['doughs'][number]['state']): boolean {
  return underWayStates.some((each) => each === state)
}
