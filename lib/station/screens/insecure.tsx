import { station as words } from '../../words/en/station'

/** On an address that is not safe nothing is begun: it says why, and what to do. */
export function Insecure() {
  const { title, why, how } = words.insecure
  return (
    <main className="narrow">
      <h1>{title}</h1>
      <p>{why}</p>
      <p>{how}</p>
    </main>
  )
}
