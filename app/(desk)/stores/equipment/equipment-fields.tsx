import type { ReactNode } from 'react'
import { offMostShareOfBlock } from '@/lib/kitchen/checks/judge-shown.input'
import type { EquipmentKind } from '@/lib/kitchen/stores/equipment-facts.input'
import { FieldStack } from '@/lib/ui/field-stack'
import { FormField } from '@/lib/ui/form-field'
import { FormTextArea } from '@/lib/ui/form-text-area'
import { largeMassUnit, massInUnit, smallMassUnit, type MassUnit } from '@/lib/words/format/mass'
import { plainNumber } from '@/lib/words/format/plain-number'
import { temperatureInUnit } from '@/lib/words/format/temperature'
import { degreeSign, differenceInUnit } from '@/lib/words/format/temperature-difference'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import type { EquipmentRow } from './equipment-entries'
import type { OwnUnits } from '@/lib/words/format/own-units'

type EquipmentFieldsProps = {
  kind: EquipmentKind
  units: OwnUnits
  /** Left out for a new one. */
  present?: EquipmentRow
  words: Pick<Words, 'stores' | 'desk'>
  language: Language
  /** Fields behind the others. */
  children?: ReactNode
}

type NumberField = {
  name: string
  label: string
  hint?: string
  unit?: string
  value: number | null | undefined
  optional?: true
}

/** The fields of the form for a piece of equipment of one kind. */
export function EquipmentFields({ kind, units, present, words, language, children }: EquipmentFieldsProps) {
  const { fields: text } = words.stores.equipment
  return (
    <FieldStack>
      <FormField
        name="name"
        type="text"
        label={text.name}
        hint={text.nameHint}
        defaultValue={present?.name}
        autoComplete="off"
      />
      {numberFields(kind, units, present, words.stores.equipment, language).map(
        ({ name, label, hint, unit, value, optional }) => (
          <FormField
            key={name}
            name={name}
            type="number"
            label={label}
            hint={hint}
            unit={unit}
            width="short"
            required={!optional}
            optionalWord={optional ? words.desk.optional : undefined}
            defaultValue={
              value === null || value === undefined
                ? undefined
                : plainNumber(value, { locale: units.locale, significant: 12, grouped: false })
            }
          />
        ),
      )}
      <FormTextArea
        name="note"
        label={text.note}
        optionalWord={words.desk.optional}
        hint={text.noteHint}
        defaultValue={present?.note}
      />
      {children}
    </FieldStack>
  )
}

function numberFields(
  kind: EquipmentKind,
  units: OwnUnits,
  present: EquipmentRow | undefined,
  equipment: Words['stores']['equipment'],
  language: Language,
): NumberField[] {
  const text = equipment.fields
  const small = smallMassUnit(units.massUnits)
  const large = largeMassUnit(units.massUnits)
  const degree = degreeSign[units.temperatureUnits]
  const mass = (massG: number | null | undefined, unit: MassUnit) =>
    massG === null || massG === undefined ? massG : massInUnit(massG, unit)
  const degrees = (differenceC: number | null | undefined) =>
    differenceC === null || differenceC === undefined
      ? differenceC
      : differenceInUnit(differenceC, units.temperatureUnits)
  const temp = (tempC: number | null | undefined) =>
    tempC === null || tempC === undefined ? tempC : temperatureInUnit(tempC, units.temperatureUnits)
  const written = (tempC: number) =>
    plainNumber(temperatureInUnit(tempC, units.temperatureUnits), { locale: units.locale, significant: 3 })
  const range = (leastC: number, mostC: number) => ({ least: written(leastC), most: written(mostC) })
  const volume = {
    name: 'volumeMl',
    label: text.volumeMl,
    hint: text.volumeHint,
    unit: 'mL',
    value: present?.volumeMl,
  }
  switch (kind) {
    case 'scale':
      return [
        {
          name: 'resolutionG',
          label: text.resolutionG,
          hint: text.resolutionGHint,
          unit: small,
          value: mass(present?.resolutionG, small),
        },
        { name: 'mostG', label: text.mostG, unit: large, value: mass(present?.mostG, large) },
        { name: 'leastG', label: text.leastG, unit: small, value: mass(present?.leastG, small), optional: true },
        {
          name: 'repeatabilityG',
          label: text.repeatabilityG,
          hint: text.repeatabilityGHint,
          unit: small,
          value: mass(present?.repeatabilityG, small),
          optional: true,
        },
        {
          name: 'testMassG',
          label: text.testMassG,
          hint: text.testMassGHint,
          unit: small,
          value: mass(present?.testMassG, small),
          optional: true,
        },
        {
          name: 'offMostG',
          label: text.offMost,
          hint: text.offMostGHint,
          unit: small,
          value: mass(present?.offMostG, small),
          optional: true,
        },
      ]
    case 'thermometer':
      return [
        { name: 'resolutionC', label: text.resolutionC, unit: degree, value: degrees(present?.resolutionC) },
        {
          name: 'offMostC',
          label: text.offMost,
          hint: say(text.offMostCHint, language, { least: degrees(0.5) ?? 0.5, degree }),
          unit: degree,
          value: degrees(present?.offMostC),
          optional: true,
        },
      ]
    case 'mixer':
      return [
        { name: 'leastG', label: text.leastDough, unit: large, value: mass(present?.leastG, large) },
        { name: 'mostG', label: text.mostDough, unit: large, value: mass(present?.mostG, large) },
        {
          name: 'frictionCPerMin',
          label: text.friction,
          hint: text.frictionHint,
          unit: say(equipment.perMin, language, { degree }),
          value: degrees(present?.frictionCPerMin),
          optional: true,
        },
      ]
    case 'proofer':
      return []
    case 'oven':
      return [
        { name: 'decks', label: text.decks, value: present?.decks },
        { name: 'placesPerDeck', label: text.placesPerDeck, hint: text.placesHint, value: present?.placesPerDeck },
      ]
    case 'pan':
      return [volume]
    case 'volume_gauge':
      return [
        volume,
        {
          name: 'blockMl',
          label: text.blockMl,
          hint: text.blockMlHint,
          unit: 'mL',
          value: present?.blockMl,
          optional: true,
        },
        {
          name: 'offMostMl',
          label: text.offMost,
          hint: say(text.offMostMlHint, language, { share: offMostShareOfBlock * 100 }),
          unit: 'mL',
          value: present?.offMostMl,
          optional: true,
        },
      ]
    case 'hot_water':
      return [
        {
          name: 'tempC',
          label: say(text.hotTemp, language, range(20, 95)),
          hint: text.hotTempHint,
          unit: degree,
          value: temp(present?.tempC),
        },
        {
          name: 'limitC',
          label: say(text.limit, language, range(20, 95)),
          hint: say(text.limitHint, language, { usual: written(60) }),
          unit: degree,
          value: temp(present?.limitC),
          optional: true,
        },
      ]
    case 'chilled_water':
      return [
        {
          name: 'tempC',
          label: say(text.chilledTemp, language, range(0, 20)),
          hint: text.chilledTempHint,
          unit: degree,
          value: temp(present?.tempC),
        },
      ]
    case 'tap_water':
      return [
        {
          name: 'tempC',
          label: say(text.tapTemp, language, range(0, 40)),
          hint: text.tapTempHint,
          unit: degree,
          value: temp(present?.tempC),
        },
      ]
    case 'ice':
      return [
        {
          name: 'tempC',
          label: say(text.iceTemp, language, range(-40, 0)),
          hint: text.iceTempHint,
          unit: degree,
          value: temp(present?.tempC),
        },
      ]
    default:
      return kind satisfies never
  }
}
