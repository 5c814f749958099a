import { say, sayName } from '../../words/say'
import { station } from '../../words/en/station'
import { stationMixing as words } from '../../words/en/station-mixing'
import { openDough } from '../keep/tablet'
import type { KeptList } from '../keep/weigh-facts'
import type { OnScale } from '../outbox/line-on-scale'
import type { StoodLine } from '../outbox/stand-of-line'
import type { MassWriter } from '../ui/masses'
import { Tap } from '../ui/tap'

type LineToldProps = { kept: KeptList; line: StoodLine; lines: readonly StoodLine[]; on: OnScale; write: MassWriter }

/** Which line of which dough this is, how much of it goes in, and on which scale. */
export function LineTold({ kept, line, lines, on, write }: LineToldProps) {
  const { batchId, code } = kept.list
  const { target, parts } = line
  const hasStages = new Set(lines.map(({ stageId }) => stageId)).size > 1
  const targetText = write(on.shownG, on.stepG)
  const aim =
    target.massG === 0
      ? words.line.aimNone
      : on.between === null
        ? say(words.line.aimFree, 'en', { target: targetText })
        : say(words.line.aim, 'en', {
            target: targetText,
            least: write.bare(on.between.leastG, on.stepG),
            most: write(on.between.mostG, on.stepG),
          })
  const place = { at: lines.findIndex(({ key }) => key === line.key) + 1, of: lines.length }
  const told = parts.map(({ isDose, massG }) =>
    sayName(isDose ? words.line.ofDose : words.line.ofFormula, 'en', { mass: write(massG, target.stepG) }),
  )
  return (
    <>
      <div className="heads">
        <h1>{say(station.dough.title, 'en', { code })}</h1>
        <Tap look="quiet" onTap={() => void openDough(batchId, { weigh: null })}>
          {words.line.all}
        </Tap>
      </div>
      <p className="progress" aria-hidden="true">
        {lines.map(({ key, stands }) => (
          <i key={key} className={key === line.key ? 'now' : stands ? 'done' : undefined} />
        ))}
      </p>
      <p>
        {on.scale === null
          ? say(words.line.placeOnly, 'en', place)
          : say(words.line.place, 'en', { ...place, scale: on.scale })}
      </p>
      <p className="what">
        <b>{line.name}</b>
        {hasStages && <small>{line.stage}</small>}
      </p>
      <p className="aim">{aim}</p>
      {told.length > 1 && <p>{say(words.line.parts, 'en', { parts: told })}</p>}
      {on.coarserThanG !== null && (
        <p className="attention">
          {say(words.scale.coarser, 'en', { tolerance: write(on.coarserThanG, target.stepG) })}
        </p>
      )}
      {on.beyond && (
        <p className="attention">
          {say(on.beyond.isHeavy ? words.scale.heavy : words.scale.light, 'en', { end: write(on.beyond.endG, 1) })}
        </p>
      )}
      {line.isDusty && target.massG > 0 && <p className="attention">{words.line.dust}</p>}
    </>
  )
}
