import { expect, type Locator } from 'playwright/test'

/** Chooses an ingredient as a person does: types its name into the field that searches, and takes it from the list. */
export async function chooseIngredient(field: Locator, name: string): Promise<void> {
  await field.fill(name)
  // What is called so stands first.
  await field.page().getByRole('listbox').getByRole('option').filter({ hasText: name }).first().click()
  await expect(field).toHaveValue(name)
}
