import { rulesOf } from '@/lib/ui/rules-of'
import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { getEquipment } from '@/lib/kitchen/stores/get-equipment'
import { changeEquipmentInput } from '@/lib/kitchen/stores/change-equipment.input'
import { ActionForm } from '@/lib/ui/action-form'
import { ActionRow } from '@/lib/ui/action-row'
import { DefinitionList } from '@/lib/ui/definition-list'
import { FormCheck } from '@/lib/ui/form-check'
import { FormDone } from '@/lib/ui/form-done'
import { LinkButton } from '@/lib/ui/link-button'
import { Notice } from '@/lib/ui/notice'
import { Section } from '@/lib/ui/section'
import { Sheet } from '@/lib/ui/sheet'
import { StateWord } from '@/lib/ui/state-word'
import { SubmitButton } from '@/lib/ui/submit-button'
import { formatDate } from '@/lib/words/format/date'
import { wordsIn } from '@/lib/words/words'
import { equipmentEntries } from '../equipment-entries'
import { EquipmentFields } from '../equipment-fields'
import { change } from './actions'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).stores.equipment.title }
}

export default async function OneEquipmentPage({ params }: { params: Promise<{ equipmentId: string }> }) {
  const { equipmentId } = await params
  const language = await currentLanguage()
  const words = wordsIn(language)
  const { equipment: text } = words.stores
  const { bakery } = await ask(getDesk)
  const equipment = await ask(getEquipment, { equipmentId })
  const { kind } = equipment
  const entries = equipmentEntries(equipment, bakery, text, language)
  const note = equipment.note
    ? [{ term: text.noteColumn, detail: <p className="max-w-measure whitespace-pre-line">{equipment.note}</p> }]
    : []
  const units = { locale: bakery.locale, massUnits: bakery.massUnits, temperatureUnits: bakery.temperatureUnits }

  return (
    <Sheet
      kicker={text.title}
      headline={equipment.name}
      margin={{
        label: text.about,
        entries: [
          { term: text.kind, detail: text.kinds[kind] },
          {
            term: text.state,
            detail: equipment.endedAt ? (
              <StateWord word={text.ended} level="off" />
            ) : (
              <StateWord word={text.inUse} level={4} />
            ),
          },
          { term: text.since, detail: formatDate(equipment.createdAt, bakery) },
        ],
      }}
    >
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
        {entries.length + note.length === 0 ? (
          <p>{text.nothing}</p>
        ) : (
          <DefinitionList entries={[...entries, ...note]} />
        )}
      </Section>
      {equipment.mayEdit ? (
        <Section id="change" title={text.change} screenOnly>
          <ActionForm
            rules={rulesOf(changeEquipmentInput)}
            action={change.bind(null, { equipmentId: equipment.id, seenRevision: equipment.revision, kind }, units)}
          >
            <FormDone word={words.desk.done} text={text.kept} />
            <EquipmentFields kind={kind} units={units} present={equipment} words={words} language={language}>
              <FormCheck
                name="inUse"
                label={text.fields.inUse}
                hint={text.fields.inUseHint}
                defaultChecked={!equipment.endedAt}
              />
            </EquipmentFields>
            <ActionRow>
              <SubmitButton tone="go">{text.changeGo}</SubmitButton>
              <LinkButton tone="plain" href="/stores/equipment">
                {text.back}
              </LinkButton>
            </ActionRow>
          </ActionForm>
        </Section>
      ) : (
        <ActionRow>
          <LinkButton tone="plain" href="/stores/equipment">
            {text.back}
          </LinkButton>
        </ActionRow>
      )}
    </Sheet>
  )
}
