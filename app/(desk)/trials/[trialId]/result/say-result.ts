import 'server-only'
import { paragraph } from '@/lib/words/paragraph'
import { say } from '@/lib/words/say'
import type { ResultForms } from './result-forms'
import type { ShownArm, ShownComparison, ShownCosts, ShownResult } from './shown-result'

/** The verdict as it stands in a table or picture; what stands instead where there is none. */
export function verdictWord(
  arm: ShownArm,
  comparison: Pick<ShownComparison, 'isIndication'>,
  { text, verdicts }: ResultForms,
): string {
  switch (arm.standing) {
    case 'control':
      return ''
    case 'no-batches':
      return text.notBaked
    case 'look-only':
      return text.lookOnly
    case 'compared':
      if (!arm.verdict) return comparison.isIndication ? text.indicationWord : text.noVerdict
      return wordOf(arm.verdict, verdicts.verdicts, verdicts.clearVerdicts)
    default:
      return arm.standing satisfies never
  }
}

/** The verdict, saying so where other things differed too. */
export function verdictText(
  arm: ShownArm,
  comparison: Pick<ShownComparison, 'isIndication'>,
  forms: ResultForms,
): string {
  const { verdicts } = forms
  if (arm.standing !== 'compared' || !arm.verdict || arm.doubts.length === 0) return verdictWord(arm, comparison, forms)
  return wordOf(arm.verdict, verdicts.doubtedVerdicts, verdicts.doubtedClearVerdicts)
}

type Verdict = NonNullable<ShownArm['verdict']>
type Verdicts = ResultForms['verdicts']['verdicts']
type ClearVerdicts = ResultForms['verdicts']['clearVerdicts']

function wordOf({ verdict, clearly }: Verdict, plain: Verdicts, clear: ClearVerdicts): string {
  return clearly && (verdict === 'better' || verdict === 'worse') ? clear[verdict] : plain[verdict]
}

type Claims = ResultForms['text']['claims']

/** What was found of an arm: the texts for it, of which one is said. */
function claimOf(
  arm: ShownArm,
  effect: NonNullable<ShownArm['effect']>,
  claims: Claims,
  forms: ResultForms,
): Claims[Exclude<keyof Claims, 'undecided'>] {
  switch (arm.verdict?.verdict) {
    case 'no-worthwhile-difference':
      return claims.noWorthwhile
    case 'no-worse':
      return claims.noWorse
    case 'same':
      return claims.same
    default:
      return forms.onAxis(effect).estimate < 0 ? claims.less : claims.more
  }
}

/**
 * What was found of an arm, with what a loaf costs more or less for whoever sees costs, and which days it is said of;
 * null when nothing was.
 */
function sentenceOf(arm: ShownArm, costs: ShownCosts | null, forms: ResultForms): string | null {
  const found = foundOf(arm, costs, forms)
  return found !== null && arm.verdict && forms.isOfTheseDays
    ? paragraph([found, forms.text.onTheseDays.only], forms.language)
    : found
}

function foundOf(arm: ShownArm, costs: ShownCosts | null, forms: ResultForms): string | null {
  const { text, language } = forms
  if (!arm.effect) return null
  const dough = forms.dough(arm.arm)
  const isDoubted = arm.doubts.length > 0
  if (arm.verdict?.verdict === 'undecided')
    return say(text.claims.undecided[isDoubted ? 'doubted' : 'plain'], language, { dough })
  const claim = claimOf(arm, arm.effect, text.claims, forms)
  const facts = { dough, measure: forms.measureInText, amount: forms.amount(forms.onAxis(arm.effect).estimate) }
  if (isDoubted) return say(claim.doubted, language, facts)
  const cost = costs?.arms.find((each) => each.arm === arm.arm)
  const difference = cost?.differencePerLoaf ?? null
  if (difference === null || !costs?.currency) return say(claim.plain, language, facts)
  if (Number(difference) === 0) return say(claim.sameCost, language, facts)
  return say(difference.startsWith('-') ? claim.cheaper : claim.dearer, language, {
    ...facts,
    money: forms.loafMoney(difference.replace('-', ''), costs.currency),
  })
}

/** The interval and what it leaves open. */
function intervalSentence(arm: ShownArm, forms: ResultForms): string | null {
  const { text, language } = forms
  if (!arm.effect) return null
  const { low, high } = forms.onAxis(arm.effect)
  if (low === null || high === null || arm.lies === null) return say(text.look, language, { count: arm.batches })
  const { lies, liesEitherWay } = text
  const said = say((forms.hasGoodDirection ? lies : liesEitherWay)[arm.lies], language, {
    low: forms.bound(low),
    high: forms.boundWithUnit(high),
    margin: forms.margin,
  })
  return arm.verdict?.verdict === 'better-on-pooled-error-only'
    ? paragraph([said, ownDaysSentence(arm.effect, forms)], language)
    : said
}

function ownDaysSentence(
  { own }: NonNullable<ShownArm['effect']>,
  { text, language, bound, boundWithUnit }: ResultForms,
) {
  return own === null || own.low === null || own.high === null
    ? text.byOwnDays.pooledOnlyNone
    : say(text.byOwnDays.pooledOnly, language, { low: bound(own.low), high: boundWithUnit(own.high) })
}

/** Verdicts that their own sentence says already. */
const saysItself = new Set<string>(['undecided', 'no-worthwhile-difference', 'no-worse', 'same'])

/** One line for each test arm; the verdict apart where the sentence does not say it. */
export function armSentences(
  comparison: ShownComparison,
  costs: ShownCosts | null,
  forms: ResultForms,
): { arm: ShownArm; sentence: string; verdict: string | null }[] {
  return comparison.arms
    .filter(({ arm }) => arm > 0)
    .flatMap((arm) => {
      const sentence = sentenceOf(arm, costs, forms)
      if (sentence === null) return []
      const verdict =
        arm.doubts.length > 0 || saysItself.has(arm.verdict?.verdict ?? '') ? null : verdictWord(arm, comparison, forms)
      return [{ arm, sentence: paragraph([sentence, intervalSentence(arm, forms)], forms.language), verdict }]
    })
}

type Headline = { headline: string; lead: string | null }

/** The state of things in one sentence, and what stands below it. */
export function headlineOf(result: ShownResult, costs: ShownCosts | null, forms: ResultForms): Headline {
  const { text, language } = forms
  const { lessFavourableOf: codes } = result.headline
  const { headline, lead } = headlineAlone(result, costs, forms)
  return codes.length === 0
    ? { headline, lead }
    : { headline, lead: paragraph([lead, say(text.lessFavourable, language, { codes })], language) }
}

function headlineAlone(result: ShownResult, costs: ShownCosts | null, forms: ResultForms): Headline {
  const { text, language } = forms
  const { analysis, batches, conduct, isEnded } = result
  const { comparison } = result.headline
  if (!comparison) {
    if (analysis.stage === 'before') return { headline: text.headline.before, lead: null }
    if (analysis.stage === 'all-in') return { headline: text.headline.allIn, lead: text.allInLead }
    if (isEnded) return { headline: text.headline.sealBroken, lead: null }
    const done = batches.filter(({ state }) => state === 'measured').length
    // What is baked again stands in the place of what was lost; an added day comes on top.
    const again = conduct.repairs.filter(({ kind }) => kind === 'bake_again').length
    return {
      headline: say(text.headline.inProgress, language, { count: done, planned: batches.length - again }),
      lead: text.inProgressLead,
    }
  }
  if (comparison.isIndication) return { headline: text.headline.indication, lead: null }
  const compared = comparison.arms.filter(({ standing }) => standing === 'compared')
  const tests = comparison.arms.filter(({ arm }) => arm > 0)
  if (compared.length === 0)
    return {
      headline: tests.some(({ effect }) => effect) ? text.headline.look : text.headline.noConclusion,
      lead: null,
    }
  if (compared.every(({ verdict }) => !verdict)) return { headline: text.headline.look, lead: null }
  const best = bestOf(compared) ?? (tests.length === 1 ? compared[0] : undefined)
  if (!best) return { headline: text.headline.noneBetter, lead: null }
  return { headline: sentenceOf(best, costs, forms) ?? text.headline.noConclusion, lead: intervalSentence(best, forms) }
}

const good = new Set(['better', 'no-worse', 'same'])

/** Of the arms with a good verdict the one that differs most, one not in doubt before one that is. */
function bestOf(compared: readonly ShownArm[]): ShownArm | undefined {
  const size = (arm: ShownArm) => Math.abs(arm.effect?.estimate ?? 0)
  return compared
    .filter(({ verdict }) => verdict && good.has(verdict.verdict))
    .sort((a, b) => Number(a.doubts.length > 0) - Number(b.doubts.length > 0) || size(b) - size(a))[0]
}
