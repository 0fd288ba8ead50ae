//! The fault catalogue in words, for the list of a check and for the book.

use sunbu_core::fault::{Area, Cause, Fault};

use crate::Words;

impl Words {
    /// A fault's name, such as “Fold is bulky”.
    pub fn fault_name(&self, fault: Fault) -> String {
        self.get(&format!("fault-{}", fault.key()))
    }

    /// What is seen of it.
    pub fn fault_sign(&self, fault: Fault) -> String {
        self.get(&format!("fault-{}.sign", fault.key()))
    }

    /// Where it comes from, as a sentence.
    pub fn fault_causes(&self, fault: Fault) -> String {
        self.get(&format!("fault-{}.causes", fault.key()))
    }

    /// What helps on the spot.
    pub fn fault_now(&self, fault: Fault) -> String {
        self.get(&format!("fault-{}.now", fault.key()))
    }

    /// How to prevent or practise it for the next time.
    pub fn fault_next(&self, fault: Fault) -> String {
        self.get(&format!("fault-{}.next", fault.key()))
    }

    /// A cause that the model does not know, short, for a list.
    pub fn fault_cause(&self, cause: Cause) -> String {
        self.get(&format!("cause-{}", cause.key()))
    }

    /// Where on the figure faults lie.
    pub fn fault_area(&self, area: Area) -> String {
        self.get(&format!("area-{}", area.key()))
    }
}
