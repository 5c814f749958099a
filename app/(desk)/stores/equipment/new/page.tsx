import { rulesOf } from '@/lib/ui/rules-of'
import type { Metadata } from 'next'
import { PageLink } from '@/lib/ui/page-link'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { equipmentKind } from '@/lib/kitchen/stores/equipment-facts.input'
import { getFormUnits } from '@/lib/kitchen/stores/get-form-units'
import { addEquipmentInput } from '@/lib/kitchen/stores/add-equipment.input'
import { ActionForm } from '@/lib/ui/action-form'
import { ActionRow } from '@/lib/ui/action-row'
import { LinkButton } from '@/lib/ui/link-button'
import { Notice } from '@/lib/ui/notice'
import { Section } from '@/lib/ui/section'
import { Sheet } from '@/lib/ui/sheet'
import { SubmitButton } from '@/lib/ui/submit-button'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { EquipmentFields } from '../equipment-fields'
import { add } from './actions'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).stores.equipment.add }
}

export default async function NewEquipmentPage({
  searchParams,
}: {
  searchParams: Promise<Record<string, string | string[] | undefined>>
}) {
  const language = await currentLanguage()
  const words = wordsIn(language)
  const { equipment: text, form } = words.stores
  const units = await ask(getFormUnits)
  const chosen = equipmentKind.safeParse((await searchParams).kind)

  if (!chosen.success) {
    return (
      <Sheet kicker={text.title} headline={text.chooseHeadline}>
        <ul aria-label={text.chooseLabel} className="mt-6 max-w-column border-t border-rule">
          {equipmentKind.options.map((kind) => (
            <li key={kind} className="border-b border-rule">
              <PageLink
                href={`/stores/equipment/new?kind=${kind}`}
                className="flex min-h-11 flex-wrap items-center gap-x-3 py-1.5 no-underline hover:bg-band"
              >
                <span className="underline decoration-1 underline-offset-[0.2em]">{text.kinds[kind]}</span>
                <span className="text-small text-ink-2">{text.kindHints[kind]}</span>
              </PageLink>
            </li>
          ))}
        </ul>
        <ActionRow>
          <LinkButton tone="plain" href="/stores/equipment">
            {text.back}
          </LinkButton>
        </ActionRow>
      </Sheet>
    )
  }

  const kind = chosen.data
  return (
    <Sheet kicker={text.title} headline={say(text.newHeadline, language, { kind: text.kinds[kind] })}>
      {kind === 'scale' ? (
        <Notice tone="plain" word={words.desk.attention}>
          {text.scaleCaution}
        </Notice>
      ) : null}
      {kind === 'volume_gauge' ? (
        <Notice tone="plain" word={words.desk.attention}>
          {text.gaugeCaution}
        </Notice>
      ) : null}
      <Section id="facts" title={text.facts}>
        <ActionForm rules={rulesOf(addEquipmentInput)} key={kind} action={add.bind(null, kind, units)}>
          <EquipmentFields kind={kind} units={units} words={words} language={language} />
          <ActionRow>
            <SubmitButton tone="go">{text.addGo}</SubmitButton>
            <LinkButton tone="plain" href="/stores/equipment">
              {form.back}
            </LinkButton>
          </ActionRow>
        </ActionForm>
      </Section>
    </Sheet>
  )
}
