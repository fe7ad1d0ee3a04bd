import * as calculators from "./calculators.js";
import * as circuit from "./circuit.js";

calculators.start();
circuit.start();
