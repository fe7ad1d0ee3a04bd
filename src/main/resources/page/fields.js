// What is wrong with a field is said beside it.

/** Marks a field and says what it accepts. */
export function setProblem(input, text) {
  const problem = document.getElementById(`${input.id}-problem`);
  problem.textContent = text;
  input.setAttribute("aria-invalid", "true");
  input.setAttribute("aria-describedby", problem.id);
}

/** Takes that back. */
export function clearProblem(input) {
  document.getElementById(`${input.id}-problem`).textContent = "";
  input.removeAttribute("aria-invalid");
  input.removeAttribute("aria-describedby");
}
