import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { listEquipment } from '@/lib/kitchen/stores/list-equipment'
import { EmptyState } from '@/lib/ui/empty-state'
import { LinkButton } from '@/lib/ui/link-button'
import { Section } from '@/lib/ui/section'
import { Sheet } from '@/lib/ui/sheet'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { EquipmentTable } from './equipment-table'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).stores.equipment.title }
}

export default async function EquipmentPage() {
  const language = await currentLanguage()
  const { stores } = wordsIn(language)
  const { equipment: text } = stores
  const { bakery } = await ask(getDesk)
  const { equipment, mayEdit } = await ask(listEquipment)
  const inUse = equipment.filter((one) => !one.endedAt)
  const ended = equipment.filter((one) => one.endedAt)

  return (
    <Sheet
      kicker={text.title}
      headline={inUse.length === 0 ? text.headlineEmpty : say(text.headline, language, { count: inUse.length })}
      actions={
        <>
          {mayEdit ? (
            <LinkButton tone="go" href="/stores/equipment/new">
              {text.add}
            </LinkButton>
          ) : null}
          <LinkButton tone="plain" href="/stores">
            {stores.toIngredients}
          </LinkButton>
        </>
      }
      margin={{ label: text.about, entries: [{ term: text.whatFor, detail: text.whatForText }] }}
    >
      <Section id="equipment" title={text.list}>
        {inUse.length === 0 ? (
          <EmptyState sentence={text.emptyText} />
        ) : (
          <EquipmentTable equipment={inUse} caption={text.list} bakery={bakery} text={text} language={language} />
        )}
      </Section>
      {ended.length > 0 ? (
        <Section id="not-in-use" title={stores.notInUse}>
          <EquipmentTable equipment={ended} caption={stores.notInUse} bakery={bakery} text={text} language={language} />
        </Section>
      ) : null}
    </Sheet>
  )
}
