import { useId, useState } from 'react'
import { station as words } from '../../words/en/station'
import { askBook, refusalIn } from '../talk/ask-book'
import { catchUp } from '../talk/keep-going'
import { beginAnew } from '../talk/people'
import { Tap } from '../ui/tap'

type EnrolProps = {
  /** The dough whose slip brought somebody here, who may be at no tablet at all. */
  scanned: string | null
  onBegin(): void
  onDone(): void
}

/** Takes the code that the desk made for this tablet, and asks the browser to keep what will lie on it. */
export function Enrol({ scanned, onBegin, onDone }: EnrolProps) {
  const [code, setCode] = useState('')
  const [error, setError] = useState<string | null>(null)
  const [keeps, setKeeps] = useState<boolean | null>(null)
  const [isAsking, setAsking] = useState(false)
  const id = useId()

  const enrol = async () => {
    if (isAsking || code.trim() === '') return
    setAsking(true)
    onBegin()
    const answer = await askBook('/api/v1/station/enrol', { body: { code } })
    if (answer?.status === 200) {
      const mayKeep = await navigator.storage.persist().catch(() => false)
      await beginAnew()
      await catchUp()
      setKeeps(mayKeep)
    } else {
      const problems = (answer?.body as { problems?: { code?: string } } | null)?.problems
      setError(problems?.code ?? refusalIn(answer)?.words ?? words.noAnswer)
    }
    setAsking(false)
  }

  if (keeps !== null)
    return (
      <main className="narrow">
        <h1>{words.enrol.done}</h1>
        <p>{keeps ? words.enrol.keeps : words.enrol.mayDrop}</p>
        <Tap look="main" onTap={onDone}>
          {words.enrol.goOn}
        </Tap>
      </main>
    )
  return (
    <main className="narrow">
      <h1>{words.enrol.title}</h1>
      <p>{words.enrol.lead}</p>
      <label htmlFor={id}>{words.enrol.code}</label>
      <input
        id={id}
        className="code"
        value={code}
        autoComplete="off"
        autoCapitalize="characters"
        spellCheck={false}
        aria-invalid={error !== null}
        aria-describedby={`${id}-error`}
        onChange={({ target }) => setCode(target.value)}
        onKeyDown={({ key }) => {
          if (key === 'Enter') void enrol()
        }}
      />
      <p id={`${id}-error`} role="alert" className="fault">
        {error}
      </p>
      <Tap look="main" onTap={() => void enrol()}>
        {words.enrol.go}
      </Tap>
      {scanned !== null && (
        <Tap look="quiet" onTap={() => window.location.assign(`/shift/${scanned}`)}>
          {words.enrol.desk}
        </Tap>
      )}
    </main>
  )
}
