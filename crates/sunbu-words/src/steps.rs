//! Steps of dressing in words.

use sunbu_core::dressing::{Step, StepId};

use crate::Words;

impl Words {
    /// How a step is done, in a few sentences.
    pub fn step_text(&self, step: StepId) -> String {
        self.get(&format!("step-{}.text", step.key()))
    }

    /// The numbers of a step, one line each.
    pub fn step_numbers(&self, step: &Step) -> Vec<String> {
        step.numbers
            .iter()
            .map(|number| self.number(number))
            .collect()
    }

    /// What stands over or under all cautions: they are customary, no medical advice.
    pub fn cautions_note(&self) -> String {
        self.get("cautions-note")
    }
}
