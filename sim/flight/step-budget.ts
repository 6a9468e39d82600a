/** How many steps the integration of a flight may take, those of looking for its touchdown among them. Counted: no clock is asked. */

export class BeyondBudgetError extends Error {
  constructor(steps: number) {
    super(`this flight takes more than ${steps} steps`);
    this.name = 'BeyondBudgetError';
  }
}

export class StepBudget {
  private readonly steps: number;
  private left: number;

  constructor(steps: number) {
    this.steps = steps;
    this.left = steps;
  }

  spend(): void {
    if (this.left-- <= 0) throw new BeyondBudgetError(this.steps);
  }
}
