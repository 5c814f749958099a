import { useSyncExternalStore } from 'react'
import { say } from '../../words/say'
import { station as words } from '../../words/en/station'
import { forget } from '../keep/tablet'
import type { TabletNow } from '../keep/read-tablet'
import { leave } from '../talk/leave'
import { listenOnline, readOnline } from '../talk/online'
import { Tap } from '../ui/tap'
import { isNewerThere, listenNewer, takeOver } from '../worker/watch-worker'

type StripProps = { now: TabletNow; personName: string | null; onList(): void }

/** What always stands at the top: which tablet, who is on it, whether the book answers, and what has not reached it. */
export function Strip({ now, personName, onList }: StripProps) {
  const isOnline = useSyncExternalStore(listenOnline, readOnline)
  const isNewer = useSyncExternalStore(listenNewer, isNewerThere)
  const kept = [...now.entries, ...now.photos]
  const count = (wanted: string) => kept.filter(({ state }) => state === wanted).length
  const [waiting, attention] = [count('waiting'), count('attention')]
  const held = now.holders.filter(({ asks }) => asks !== 'nothing').map(({ personId }) => personId)
  const waitFor = [
    ...new Set(
      kept
        .filter(({ state, personId }) => state === 'waiting' && held.includes(personId))
        .map(({ personName: name }) => name),
    ),
  ]
  return (
    <header className="strip">
      <p>
        <b>{now.station?.station.name}</b>
      </p>
      <p>{personName === null ? words.strip.nobody : say(words.strip.on, 'en', { name: personName })}</p>
      <p role="status">{isOnline ? words.strip.online : words.strip.offline}</p>
      <p role="status">
        {waiting === 0 && attention === 0 ? words.strip.allSent : null}
        {waiting > 0 ? say(words.strip.waiting, 'en', { count: waiting }) : null}
      </p>
      {attention > 0 && (
        <p role="status" className="attention">
          {say(words.strip.attention, 'en', { count: attention })}
        </p>
      )}
      {waitFor.length > 0 && !now.withdrawn && <p>{say(words.strip.waitsFor, 'en', { names: waitFor })}</p>}
      <div className="strip-acts">
        <Tap look="quiet" onTap={onList}>
          {words.list.open}
        </Tap>
        {personName !== null && !now.withdrawn && (
          <>
            <Tap look="quiet" onTap={() => void forget('on')}>
              {words.strip.change}
            </Tap>
            <Tap look="quiet" onTap={() => void leave()}>
              {words.strip.logOff}
            </Tap>
          </>
        )}
        {isNewer && (
          <Tap look="quiet" label={words.update} onTap={takeOver}>
            {words.updateGo}
          </Tap>
        )}
      </div>
    </header>
  )
}
