/** Conditions of steps that ask another controller to carry on, and of those where there is none; where nobody knows, there is another one to look at. */
export const [manyControllers, oneController] = ["Controller count <> 1", "Controller count = 1"] as const;
