import { LinkButton } from '@/lib/ui/link-button'
import type { Words } from '@/lib/words/words'
import type { PlanSeen } from './plan-seen'

type WaysOnProps = Pick<PlanSeen, 'trial' | 'may'> & { text: Words['trials']['plan'] }

/** The ways to what this plan waits for, so that nobody looks for them at the foot of a long page. */
export function WaysOn({ trial, may, text }: WaysOnProps) {
  if (may.change) {
    return (
      <>
        <LinkButton tone="go" href="#propose">
          {text.toPropose}
        </LinkButton>
        <LinkButton tone="plain" href={`/trials/${trial.id}/edit`}>
          {text.change}
        </LinkButton>
      </>
    )
  }
  if (may.decide) {
    return (
      <LinkButton tone="go" href="#decide">
        {text.toDecide}
      </LinkButton>
    )
  }
  if (may.withdraw) {
    return (
      <LinkButton tone="plain" href="#withdraw">
        {text.withdraw}
      </LinkButton>
    )
  }
  if (!trial.isFrozen) return null
  return (
    <>
      {trial.state === 'approved' ? (
        <LinkButton tone="go" href="/shift">
          {text.toShift}
        </LinkButton>
      ) : null}
      <LinkButton tone={trial.state === 'approved' ? 'plain' : 'go'} href={`/trials/${trial.id}/result`}>
        {text.result}
      </LinkButton>
    </>
  )
}
