export function show(element) {
  element.textContent = "";
  return {};
}
