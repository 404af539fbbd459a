//! People, vehicles and the specification shelf.

use super::{Acting, Done, Outcome, clipped};
use crate::engine::Trouble;
use crate::entry::{Fact, Personal, Role, Shelf};
use crate::fastener::{Lubrication, Printed, RecheckAt, TorqueSpec};
use crate::ident::{Digest, PersonId, TireId, VehicleId};
use crate::limits::{Placard, PlacardTire};
use crate::measure::{DistanceUnit, PressureUnit, SpanUnit};
use crate::rotation::Pattern;
use crate::sidewall;
use crate::vehicle::{Axle, Class, Drive, Equipment, Layout};

/// What stands on a manual's page about wheel torque.
pub(super) struct Page<'p> {
    pub printed: &'p [String],
    pub thread: Option<&'p str>,
    pub condition: Option<&'p str>,
    pub recheck: &'p [String],
    pub studs: Option<u8>,
}

/// What rolls under a new vehicle.
pub(super) struct Wheels<'w> {
    pub class: Class,
    pub axles: &'w [String],
    pub spare: bool,
}

impl Acting<'_> {
    pub(super) fn add_person(
        &self,
        author: Option<&str>,
        name: &str,
        role: Role,
        phone: Option<String>,
    ) -> Result<(PersonId, Outcome), Trouble> {
        let name = self.text("what-name", name)?;
        let taken = self.book.people.iter().any(|p| p.name.as_deref().is_some_and(|n| n.eq_ignore_ascii_case(&name)));
        if taken {
            return Err(Trouble::mend(self.words, "trouble-name-taken", &[("name", clipped(&name).into())]));
        }
        let phone = phone.map(|phone| self.text("what-phone", &phone)).transpose()?;
        let person = PersonId::from_parts(self.now_ms(), self.host.random());
        // The first person in a book is added by that person.
        let author = if self.book.people.is_empty() { person } else { self.author(author)? };
        let said = self.words.text("said-person", &[("name", name.as_str().into())]);
        let personal = Personal { name: Some(name), phone, ..self.personal() };
        let facts = vec![(Fact::PersonAdded { person, role }, Some(personal))];
        Ok((author, Outcome { facts, sentences: vec![said], ..Outcome::default() }))
    }

    pub(super) fn add_vehicle(
        &self,
        name: &str,
        model: &str,
        wheels: &Wheels<'_>,
        has: Option<Vec<Equipment>>,
        own: bool,
        plate: Option<String>,
    ) -> Done {
        let name = self.text("what-name", name)?;
        let model = self.text("what-model", model)?;
        if self.book.vehicles.iter().any(|vehicle| vehicle.name.eq_ignore_ascii_case(&name)) {
            return Err(Trouble::mend(self.words, "trouble-name-taken", &[("name", clipped(&name).into())]));
        }
        let plate = plate.map(|plate| self.text("what-plate", &plate)).transpose()?;
        let vehicle = VehicleId::from_parts(self.now_ms(), self.host.random());
        let (class, layout) = (wheels.class, self.layout(wheels)?);
        let personal = plate.map(|plate| Personal { plate: Some(plate), ..self.personal() });
        let mut facts: Vec<_> = vec![(
            Fact::VehicleAdded { vehicle, name: name.clone(), model, class, layout: layout.clone(), own },
            personal,
        )];
        for at in layout.places() {
            let tire = TireId::from_parts(self.now_ms(), self.host.random());
            facts.push((Fact::TireFitted { tire, vehicle, at, job: None }, None));
        }
        facts.extend(has.map(|has| (Fact::VehicleEquipped { vehicle, has }, None)));
        let said = self.words.text("said-vehicle", &[("name", name.into())]);
        Ok(Outcome { facts, sentences: vec![said], ..Outcome::default() })
    }

    /// The axles of a new vehicle: the first one of a vehicle that drives by itself is steered.
    fn layout(&self, wheels: &Wheels<'_>) -> Result<Layout, Trouble> {
        let towed = matches!(wheels.class, Class::LightTrailer | Class::Trailer);
        let most = crate::lifting::MOST_AXLES;
        let wrong = |given: &str| {
            let args = [("given", clipped(given).into()), ("most", most.into())];
            Trouble::mend(self.words, "trouble-axles", &args)
        };
        let axle = |(at, text): (usize, &String)| {
            let dual = match text.trim().to_ascii_lowercase().as_str() {
                "single" => false,
                "dual" => true,
                _ => return Err(wrong(text)),
            };
            Ok(Axle { dual, steer: at == 0 && !towed, rating: None })
        };
        let axles = wheels.axles.iter().enumerate().map(axle).collect::<Result<Vec<_>, _>>()?;
        if axles.is_empty() {
            let mut layout = Layout::two_axles(wheels.spare);
            layout.axles.iter_mut().for_each(|axle| axle.steer &= !towed);
            return Ok(layout);
        }
        if axles.len() > most || (axles.len() == 1 && !towed) {
            return Err(wrong(&wheels.axles.join(" ")));
        }
        Ok(Layout { axles, spare: wheels.spare })
    }

    pub(super) fn equip(&self, vehicle: Option<&str>, has: Vec<Equipment>) -> Done {
        let vehicle = self.vehicle(vehicle)?;
        let said = self.words.equipment(&has);
        Ok(Outcome::fact(Fact::VehicleEquipped { vehicle: vehicle.id, has }).note(said))
    }

    fn page_photo(&self, photo: Option<usize>) -> Result<Option<Digest>, Trouble> {
        photo.map(|number| self.photo_numbered(&self.bay()?, number)).transpose()
    }

    fn put_on_shelf(&self, model: &str, shelf: Shelf, source: &str, photo: Option<Digest>) -> Done {
        let source = self.text("what-source", source)?;
        Ok(Outcome::fact(Fact::SpecificationRecorded { model: model.to_owned(), shelf, source, photo }))
    }

    pub(super) fn record_torque(
        &self,
        vehicle: Option<&str>,
        page: &Page<'_>,
        source: &str,
        photo: Option<usize>,
    ) -> Done {
        let vehicle = self.vehicle(vehicle)?;
        if page.printed.is_empty() {
            let what = self.words.text("what-torque", &[]);
            return Err(Trouble::mend(self.words, "trouble-empty", &[("what", what.into())]));
        }
        let mut printed: Vec<Printed> = Vec::new();
        for text in page.printed {
            let read = text
                .parse()
                .map_err(|_| Trouble::mend(self.words, "trouble-torque", &[("given", clipped(text).into())]))?;
            printed.push(read);
        }
        let mut spec = TorqueSpec::printed(printed);
        spec.thread = page
            .thread
            .map(|text| {
                text.parse()
                    .map_err(|_| Trouble::mend(self.words, "trouble-thread", &[("given", clipped(text).into())]))
            })
            .transpose()?;
        spec.condition = match page.condition.map(str::trim) {
            None => Lubrication::NotKnown,
            Some(text) if text.eq_ignore_ascii_case("dry") => Lubrication::Dry,
            Some(text) if text.eq_ignore_ascii_case("oiled") => Lubrication::Oiled,
            Some(text) => Lubrication::AsManualSays(self.text("what-condition", text)?),
        };
        for text in page.recheck {
            spec.recheck.push(RecheckAt { from: None, by: self.reading::<DistanceUnit>(text, None)? });
        }
        if page.studs.is_some_and(|studs| !(3..=12).contains(&studs)) {
            return Err(Trouble::mend(self.words, "trouble-studs", &[]));
        }
        spec.source = self.text("what-source", source)?;
        let page_photo = self.page_photo(photo)?;
        let clash = spec.unit_clash();
        let outcome =
            self.put_on_shelf(&vehicle.model, Shelf::Torque { spec, studs: page.studs }, source, page_photo)?;
        Ok(match clash {
            Some(clash) => {
                let args = [("first", clash.first.to_string().into()), ("second", clash.second.to_string().into())];
                outcome.note(self.words.text("said-unit-clash", &args))
            }
            None => outcome,
        })
    }

    pub(super) fn record_placard(
        &self,
        vehicle: Option<&str>,
        axles: &[String],
        spare: Option<&str>,
        size: Option<String>,
        source: &str,
        photo: Option<usize>,
    ) -> Done {
        let vehicle = self.vehicle(vehicle)?;
        let wanted = vehicle.layout.axles.len();
        if axles.len() != wanted {
            return Err(Trouble::mend(self.words, "trouble-placard-axles", &[("count", wanted.into())]));
        }
        let size = match size {
            Some(text) => Some(self.size(&text)?),
            None => None,
        };
        let tire = |text: &str| -> Result<Option<PlacardTire>, Trouble> {
            let cold = self.reading::<PressureUnit>(text, None)?;
            Ok(Some(PlacardTire { cold, full_load: None, size: size.clone() }))
        };
        let mut placard = Placard { source: self.text("what-source", source)?, ..Placard::default() };
        for text in axles {
            placard.axles.push(tire(text)?);
        }
        placard.spare = match spare {
            // The size on the placard is that of the tires on the axles.
            Some(text) => tire(text)?.map(|tire| PlacardTire { size: None, ..tire }),
            None => None,
        };
        let page_photo = self.page_photo(photo)?;
        self.put_on_shelf(&vehicle.model, Shelf::Placard { placard }, source, page_photo)
    }

    /// A size in canonical form.
    fn size(&self, text: &str) -> Result<String, Trouble> {
        let marking = sidewall::parse(text);
        if let Some(trouble) = Trouble::of_marking(text, &marking, self.words) {
            return Err(trouble);
        }
        marking.size.map(|size| size.to_string()).ok_or_else(|| self.no_size(text))
    }

    pub(super) fn record_drive(&self, vehicle: Option<&str>, drive: Drive, source: &str) -> Done {
        if drive == Drive::Unknown {
            return Err(Trouble::mend(self.words, "trouble-drive-unknown", &[]));
        }
        let vehicle = self.vehicle(vehicle)?;
        self.put_on_shelf(&vehicle.model, Shelf::Drive { drive }, source, None)
    }

    pub(super) fn record_pattern(&self, vehicle: Option<&str>, pattern: &str, source: &str) -> Done {
        let vehicle = self.vehicle(vehicle)?;
        let pattern: Pattern = pattern
            .trim()
            .parse()
            .map_err(|_| Trouble::mend(self.words, "trouble-pattern", &[("given", clipped(pattern).into())]))?;
        self.put_on_shelf(&vehicle.model, Shelf::Pattern { pattern: pattern.code().to_owned() }, source, None)
    }

    pub(super) fn record_brakes(&self, vehicle: Option<&str>, pads: &str, source: &str) -> Done {
        let vehicle = self.vehicle(vehicle)?;
        let pads = self.reading::<SpanUnit>(pads, None)?;
        self.put_on_shelf(&vehicle.model, Shelf::Brakes { pads }, source, None)
    }

    pub(super) fn record_lift_points(&self, vehicle: Option<&str>, text: &str, source: &str) -> Done {
        let vehicle = self.vehicle(vehicle)?;
        let text = self.text("what-lift-points", text)?;
        self.put_on_shelf(&vehicle.model, Shelf::LiftPoints { text }, source, None)
    }
}
