import { say } from '../../words/say'
import { station } from '../../words/en/station'
import { stationMixing as words } from '../../words/en/station-mixing'
import { openDough } from '../keep/tablet'
import type { KeptList } from '../keep/weigh-facts'
import { lineOnScale } from '../outbox/line-on-scale'
import { nextToWeigh } from '../outbox/next-to-weigh'
import type { StoodLine } from '../outbox/stand-of-line'
import { shownTime } from '../ui/figures'
import { massWriter } from '../ui/masses'
import { saidOfLine } from '../ui/said-of-line'
import { Tap } from '../ui/tap'

type WeighLinesProps = { kept: KeptList; lines: readonly StoodLine[]; locale: string; timeZone: string }

/** All lines of a dough in the order in which they are weighed: what is written, and what is left. */
export function WeighLines({ kept, lines, locale, timeZone }: WeighLinesProps) {
  const { batchId, list, swaps, at } = kept
  const write = massWriter({ unit: list.unit, locale })
  const left = lines.filter(({ stands }) => stands === null).length
  const next = nextToWeigh(lines, null)
  const stages = [...new Map(lines.map(({ stageId, stage }) => [stageId, stage]))]
  const open = (key: string) => void openDough(batchId, { weigh: key })
  return (
    <div className="narrow">
      <div className="heads">
        <h1>{say(words.list.title, 'en', { code: list.code })}</h1>
        <Tap look="quiet" onTap={() => void openDough(batchId)}>
          {words.list.back}
        </Tap>
      </div>
      <p role="status">
        <b>{left === 0 ? words.list.allDone : say(words.list.left, 'en', { count: left, of: lines.length })}</b>
      </p>
      {next && (
        <Tap look="main" onTap={() => open(next.key)}>
          {say(words.list.next, 'en', { line: next.name })}
        </Tap>
      )}
      {stages.map(([stageId, stage]) => (
        <section key={stageId}>
          {stages.length > 1 && <h2>{stage}</h2>}
          <ul className="rows">
            {lines
              .filter((line) => line.stageId === stageId)
              .map((line) => {
                const on = lineOnScale(line, list, line.stands ? [] : swaps)
                return (
                  <li key={line.key} className={line.stands ? 'stood' : undefined}>
                    <Tap look="row" onTap={() => open(line.key)}>
                      <span>
                        {line.name}
                        {on.scale !== null && (
                          <>
                            <br />
                            <small>{say(words.line.on, 'en', { scale: on.scale })}</small>
                          </>
                        )}
                      </span>
                      <b className="end">{line.target.massG === 0 ? words.list.none : write(on.shownG, on.stepG)}</b>
                      <span className="kept">
                        {line.stands ? saidOfLine(line.stands, write, line.target.stepG) : words.list.open}
                        {line.stands && (
                          <>
                            <br />
                            <small>{station.states[line.stands.state]}</small>
                          </>
                        )}
                      </span>
                    </Tap>
                    {line.lost.length > 0 && <p className="attention">{words.list.lost}</p>}
                  </li>
                )
              })}
          </ul>
        </section>
      ))}
      <p className="note">{say(words.list.asOf, 'en', { time: shownTime(at, { locale, timeZone }) })}</p>
    </div>
  )
}
