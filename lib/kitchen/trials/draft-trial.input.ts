import { withTrialContent } from './trial-content.input'

export const draftTrialInput = withTrialContent({})
