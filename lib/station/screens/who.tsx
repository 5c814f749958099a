import { useState } from 'react'
import { station as words } from '../../words/en/station'
import { stationBadge } from '../../words/en/station-badge'
import type { Holder } from '../outbox/entry'
import { catchUp } from '../talk/keep-going'
import { beOn, goOnAs } from '../talk/people'
import { Tap } from '../ui/tap'
import { BadgeScreen, useBadge } from './badge'
import { PinPad } from './pin-pad'

type Person = { id: string; name: string }

/** The names of those who can log on: one tap where their time here is not over, otherwise the PIN, or a badge. */
export function Who({ people, holders }: { people: readonly Person[]; holders: readonly Holder[] }) {
  const [asked, setAsked] = useState<Person | null>(null)
  const [isScanning, setScanning] = useState(false)
  const badge = useBadge()
  const isTap = (id: string) =>
    holders.some(
      ({ personId, token, endsAt, asks }) => personId === id && token !== null && asks !== 'pin' && endsAt > Date.now(),
    )
  const come = async (person: Person) => {
    if (!isTap(person.id)) {
      setAsked(person)
      return
    }
    await beOn(person.id)
    if (await goOnAs(person.id)) await catchUp()
    else setAsked(person)
  }
  if (asked) return <PinPad person={asked} onBack={() => setAsked(null)} />
  if (isScanning) return <BadgeScreen badge={badge} onBack={() => setScanning(false)} />
  return (
    <div className="narrow">
      <h1>{words.who.title}</h1>
      {people.length === 0 && <p>{words.who.nobody}</p>}
      <ul className="rows">
        {people.map((person) => (
          <li key={person.id}>
            <Tap look="row" onTap={() => void come(person)}>
              <b>{person.name}</b>
              <span>{isTap(person.id) ? words.who.tap : words.who.pin}</span>
            </Tap>
          </li>
        ))}
      </ul>
      {people.length > 0 && (
        <>
          <p role="alert" className="fault">
            {badge.fault}
          </p>
          <Tap
            look="plain"
            onTap={() => {
              badge.clear()
              setScanning(true)
            }}
          >
            {stationBadge.show}
          </Tap>
        </>
      )}
    </div>
  )
}
