import { changesAllergens } from '@/lib/kitchen/formulas/rules'
import { Section } from '@/lib/ui/section'
import { wordsIn, type Language } from '@/lib/words/words'
import { VersionDifferences } from '../../formulas/differences/version-differences'
import { SignForm } from '../../formulas/signing/sign-form'
import { Signatures } from '../../formulas/signing/signatures'
import type { ShownBakery } from '../../trials/[trialId]/result/shown-result'
import { CostSection } from './cost-section'
import type { DecisionSeen, VersionSeen } from './decision-seen'

type ChangePartProps = { decision: DecisionSeen; bakery: ShownBakery; language: Language }

/** What a change does to the formula: cost, lines, totals, allergens, and the caution about the label. */
export function ChangeShown({ decision, bakery, language }: ChangePartProps) {
  const words = wordsIn(language)
  const { decisions: text } = words
  const { change, version, control } = decision
  if (!change || !version) return null
  const numbers = { from: control.number, to: version.number }
  return (
    <>
      {change.cost ? (
        <CostSection cost={change.cost} {...numbers} text={text} locale={bakery.locale} language={language} />
      ) : null}
      <VersionDifferences compared={change} {...numbers} words={words} units={bakery} language={language} />
      <Section id="label" title={text.label}>
        {changesAllergens(change.allergens) ? <p className="max-w-measure font-bold">{text.labelAllergens}</p> : null}
        <p className="max-w-measure">{text.labelText}</p>
      </Section>
    </>
  )
}

/** Who signed the version of a change, and the form for whoever may sign it now. */
export function ChangeSigned({
  version,
  bakery,
  language,
}: Omit<ChangePartProps, 'decision'> & { version: VersionSeen }) {
  const words = wordsIn(language)
  const { decisions: text, formulas } = words
  return (
    <>
      <Section id="signatures" title={formulas.sheet.signatures}>
        <Signatures version={version} words={words} bakery={bakery} language={language} />
      </Section>
      {version.signing ? (
        <SignForm
          title={{ text: text.sign, note: text.signNote }}
          version={version}
          signing={version.signing}
          words={words}
          bakery={bakery}
          language={language}
        />
      ) : null}
    </>
  )
}
