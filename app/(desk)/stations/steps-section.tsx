import { Section } from '@/lib/ui/section'
import type { Words } from '@/lib/words/words'

/** How each kind of device is told to trust a certificate. */
export function StepsSection({ text }: { text: Words['stations'] }) {
  const { ipad, android, windows } = text.devices
  return (
    <Section id="steps" title={text.steps} note={text.untried}>
      <div className="grid gap-x-10 gap-y-5 mid:grid-cols-3">
        {[ipad, android, windows].map(({ title, first, second, third, fourth }) => (
          <div key={title}>
            <h3 className="font-bold">{title}</h3>
            <ol className="mt-1 list-decimal space-y-1.5 pl-5">
              {[first, second, third, fourth].map((step) => (
                <li key={step}>{step}</li>
              ))}
            </ol>
          </div>
        ))}
      </div>
    </Section>
  )
}
