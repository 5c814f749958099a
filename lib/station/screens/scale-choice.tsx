import { say } from '../../words/say'
import { stationMixing as words } from '../../words/en/station-mixing'
import { chooseScale } from '../keep/choose-scale'
import type { KeptList } from '../keep/weigh-facts'
import { swappedFor } from '../outbox/line-on-scale'
import type { StoodLine } from '../outbox/stand-of-line'
import type { MassWriter } from '../ui/masses'
import { Tap } from '../ui/tap'

type ScaleChoiceProps = { kept: KeptList; line: StoodLine; write: MassWriter; onDone(): void }

/** Another of the bakery's scales in place of a line's own, for all lines of that one that are still to be weighed. */
export function ScaleChoice({ kept, line, write, onDone }: ScaleChoiceProps) {
  const { batchId, list, swaps } = kept
  const own = line.scale
  const inUse = swappedFor(line, list.scales, swaps)?.id ?? own?.id
  const others = list.scales.filter(({ id }) => id !== own?.id)
  const choose = (to: string | null) => void chooseScale(batchId, own?.id ?? null, to).then(onDone)
  return (
    <div className="narrow">
      <div className="heads">
        <h1>{words.scale.title}</h1>
        <Tap look="quiet" onTap={onDone}>
          {words.scale.cancel}
        </Tap>
      </div>
      <p>{own ? say(words.scale.why, 'en', { scale: own.name }) : words.scale.whyNone}</p>
      {others.length === 0 && <p>{words.scale.none}</p>}
      <ul className="rows">
        {others.map(({ id, name, stepG, mostG }) => (
          <li key={id}>
            <Tap look="row" pressed={id === inUse} onTap={() => choose(id)}>
              <b>{name}</b>
              <span>{say(words.scale.row, 'en', { step: write(stepG, stepG), most: write(mostG, 1) })}</span>
              {id === inUse && <span className="end">{words.scale.now}</span>}
            </Tap>
          </li>
        ))}
      </ul>
      {own && inUse !== own.id && (
        <Tap look="plain" onTap={() => choose(null)}>
          {say(words.scale.back, 'en', { scale: own.name })}
        </Tap>
      )}
    </div>
  )
}
