-- The whole day: bookings, customers' standing go-aheads, attempts and causes, wheels, road tests, work by other firms,
-- questions, calls and the contact log.

CREATE TABLE "standing_go_ahead" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "customer_id" uuid NOT NULL,
  "vehicle_id" uuid,
  "job_id" uuid,
  "kind" text NOT NULL CHECK ("kind" IN ('lookForFault', 'smallThings', 'fleetLimit')),
  "up_to" numeric NOT NULL,
  "order_number" text,
  "by_name" text NOT NULL,
  "until_day" date,
  "ended_at" timestamptz(3),
  "end_words" text,
  CONSTRAINT "standing_go_ahead_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "standing_go_ahead_shop_id_job_id_idx" ON "standing_go_ahead" ("shop_id", "job_id");
CREATE INDEX "standing_go_ahead_shop_id_vehicle_id_idx" ON "standing_go_ahead" ("shop_id", "vehicle_id");
CREATE INDEX "standing_go_ahead_shop_id_customer_id_idx" ON "standing_go_ahead" ("shop_id", "customer_id");

CREATE TABLE "attempt" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "job_id" uuid NOT NULL,
  "concern_id" uuid NOT NULL,
  "conditions" text NOT NULL,
  "odometer" integer,
  "odometer_unit" text NOT NULL CHECK ("odometer_unit" IN ('km', 'mi')),
  "appeared" boolean NOT NULL,
  "words" text,
  "place_id" uuid,
  CONSTRAINT "attempt_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "attempt_shop_id_job_id_idx" ON "attempt" ("shop_id", "job_id");

CREATE TABLE "cause" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "job_id" uuid NOT NULL,
  "words" text NOT NULL,
  "certainty" text NOT NULL CHECK ("certainty" IN ('found', 'likely', 'notFound')),
  CONSTRAINT "cause_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "cause_shop_id_job_id_idx" ON "cause" ("shop_id", "job_id");

CREATE TABLE "cause_concern" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "job_id" uuid NOT NULL,
  "cause_id" uuid NOT NULL,
  "concern_id" uuid NOT NULL,
  CONSTRAINT "cause_concern_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "cause_concern_shop_id_job_id_idx" ON "cause_concern" ("shop_id", "job_id");

CREATE TABLE "call" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "vehicle_id" uuid NOT NULL,
  "job_id" uuid,
  "follow_up_id" uuid,
  "customer_id" uuid,
  "reason" text NOT NULL CHECK ("reason" IN ('goAhead', 'ready', 'partsIn', 'other')),
  "words" text,
  "next_try_at" timestamptz(3),
  "ended_at" timestamptz(3),
  "ended_how" text CHECK ("ended_how" IN ('logged', 'noLongerNeeded')),
  CONSTRAINT "call_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "call_shop_id_job_id_idx" ON "call" ("shop_id", "job_id");
CREATE INDEX "call_shop_id_vehicle_id_idx" ON "call" ("shop_id", "vehicle_id");
CREATE INDEX "call_shop_id_customer_id_idx" ON "call" ("shop_id", "customer_id");

CREATE TABLE "contact_entry" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "vehicle_id" uuid NOT NULL,
  "job_id" uuid,
  "follow_up_id" uuid,
  "call_id" uuid,
  "contact_id" uuid,
  "way" text NOT NULL CHECK ("way" IN ('telephone', 'message', 'letter', 'there')),
  "with_name" text,
  "reached" boolean NOT NULL,
  "answer" text,
  "next_try_at" timestamptz(3),
  "move_of" text NOT NULL CHECK ("move_of" IN ('shop', 'customer', 'supplier', 'nobody')),
  CONSTRAINT "contact_entry_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "contact_entry_shop_id_job_id_idx" ON "contact_entry" ("shop_id", "job_id");
CREATE INDEX "contact_entry_shop_id_vehicle_id_idx" ON "contact_entry" ("shop_id", "vehicle_id");

CREATE TABLE "vehicle_correction" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "vehicle_id" uuid NOT NULL,
  "field" text NOT NULL,
  "before" text,
  "after" text,
  "source" text,
  "words" text,
  CONSTRAINT "vehicle_correction_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "vehicle_correction_shop_id_vehicle_id_idx" ON "vehicle_correction" ("shop_id", "vehicle_id");

CREATE TABLE "wheel_record" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "job_id" uuid NOT NULL,
  "vehicle_id" uuid NOT NULL,
  "line_id" uuid,
  "position" text NOT NULL,
  "off_at" timestamptz(3),
  "off_by_id" uuid,
  "on_at" timestamptz(3),
  "on_by_id" uuid,
  "torque" numeric,
  "torque_unit" text CHECK ("torque_unit" IN ('newtonMetre', 'poundFoot')),
  "torque_source" text CHECK ("torque_source" IN ('vehicleMaker', 'wheelMaker', 'partMaker', 'other')),
  "source_words" text,
  "tool" text,
  "torqued_at" timestamptz(3),
  "torqued_by_id" uuid,
  CONSTRAINT "wheel_record_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "wheel_record_shop_id_job_id_idx" ON "wheel_record" ("shop_id", "job_id");
CREATE INDEX "wheel_record_shop_id_vehicle_id_idx" ON "wheel_record" ("shop_id", "vehicle_id");
CREATE INDEX "wheel_record_shop_id_line_id_idx" ON "wheel_record" ("shop_id", "line_id");

CREATE TABLE "sublet" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "job_id" uuid NOT NULL,
  "vehicle_id" uuid NOT NULL,
  "line_id" uuid,
  "form" text NOT NULL CHECK ("form" IN ('vehicleOut', 'componentOut', 'outsiderIn')),
  "firm" text NOT NULL,
  "supplier_id" uuid,
  "component" text,
  "slot_at" timestamptz(3),
  "price" numeric,
  "due_back_at" timestamptz(3),
  "state" text NOT NULL CHECK ("state" IN ('arranged', 'underWay', 'ended', 'cancelled')),
  "from_at" timestamptz(3),
  "to_at" timestamptz(3),
  "words" text,
  "end_words" text,
  CONSTRAINT "sublet_pkey" PRIMARY KEY ("shop_id", "id"),
  CONSTRAINT "sublet_ends_after_start" CHECK ("to_at" IS NULL OR "to_at" >= "from_at")
);
CREATE INDEX "sublet_shop_id_job_id_idx" ON "sublet" ("shop_id", "job_id");
CREATE INDEX "sublet_shop_id_vehicle_id_idx" ON "sublet" ("shop_id", "vehicle_id");
CREATE INDEX "sublet_shop_id_line_id_idx" ON "sublet" ("shop_id", "line_id");
CREATE INDEX "sublet_shop_id_supplier_id_idx" ON "sublet" ("shop_id", "supplier_id");

CREATE TABLE "question" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "job_id" uuid NOT NULL,
  "line_id" uuid,
  "asked_by_id" uuid NOT NULL,
  "to_id" uuid NOT NULL,
  "words" text NOT NULL,
  "answer" text,
  "answered_at" timestamptz(3),
  "answered_by_id" uuid,
  CONSTRAINT "question_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "question_shop_id_job_id_idx" ON "question" ("shop_id", "job_id");
CREATE INDEX "question_shop_id_line_id_idx" ON "question" ("shop_id", "line_id");

ALTER TABLE "shop_setting" ADD COLUMN "work_guarantee_months" integer;
ALTER TABLE "shop_setting" ADD COLUMN "part_guarantee_months" integer;
ALTER TABLE "contact" ADD COLUMN "ended_at" timestamptz(3);
ALTER TABLE "job" ADD COLUMN "expected_at" timestamptz(3);
ALTER TABLE "job" ADD COLUMN "arrived_at" timestamptz(3);
ALTER TABLE "job" ALTER COLUMN "checked_in_at" DROP NOT NULL;
ALTER TABLE "job" ADD COLUMN "ended_how" text CHECK ("ended_how" IN ('handedBack', 'released', 'cancelled'));
ALTER TABLE "job" ADD COLUMN "end_words" text;
ALTER TABLE "caution" DROP CONSTRAINT "caution_code_check";
ALTER TABLE "caution" ADD CONSTRAINT "caution_code_check" CHECK ("code" IN ('liftingPoint', 'electricDrive', 'gasTank', 'highVoltageLive', 'highVoltageDead', 'airbagUnplugged', 'fuelOpen', 'brakesOpen', 'noOil', 'wheelsNotTorqued', 'batteryOff', 'onStands', 'hotWork', 'pitOpen', 'doNotStart', 'doNotMove', 'other'));
ALTER TABLE "sheet" ADD COLUMN "kind" text NOT NULL DEFAULT 'handBack' CHECK ("kind" IN ('handBack', 'release'));
ALTER TABLE "sheet" ALTER COLUMN "kind" DROP DEFAULT;
ALTER TABLE "sheet" ADD COLUMN "words" text;
ALTER TABLE "work_line" ADD COLUMN "cause_id" uuid;
ALTER TABLE "work_line" ADD COLUMN "standing_id" uuid;
ALTER TABLE "work_line" ADD COLUMN "withdrawn_at" timestamptz(3);
ALTER TABLE "go_ahead" ADD COLUMN "standing_id" uuid;
ALTER TABLE "place" ADD COLUMN "driver_id" uuid;
ALTER TABLE "place" ADD COLUMN "odometer_out" integer;
ALTER TABLE "place" ADD COLUMN "odometer_in" integer;
ALTER TABLE "place" ADD COLUMN "odometer_unit" text CHECK ("odometer_unit" IN ('km', 'mi'));
ALTER TABLE "place" ADD COLUMN "sublet_id" uuid;
ALTER TABLE "place" ADD COLUMN "due_back_at" timestamptz(3);
ALTER TABLE "report" DROP CONSTRAINT "report_kind_check";
ALTER TABLE "report" ADD CONSTRAINT "report_kind_check" CHECK ("kind" IN ('takeIntoBay', 'moveToYard', 'startWork', 'stopWork', 'takeOnRoadTest', 'returnFromRoadTest', 'sendAway', 'bringBack'));
ALTER TABLE "flag" ADD COLUMN "clear_words" text;
ALTER TABLE "hold" ADD COLUMN "sublet_id" uuid;
ALTER TABLE "follow_up" DROP CONSTRAINT "follow_up_kind_check";
ALTER TABLE "follow_up" ADD CONSTRAINT "follow_up_kind_check" CHECK ("kind" IN ('permanentRepair', 'carriedOver', 'deferred', 'lookAgain', 'question', 'service', 'retorque'));

ALTER TABLE "standing_go_ahead" ADD CONSTRAINT "standing_go_ahead_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "standing_go_ahead" ADD CONSTRAINT "standing_go_ahead_customer_id_fkey" FOREIGN KEY ("shop_id", "customer_id") REFERENCES "customer" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "standing_go_ahead" ADD CONSTRAINT "standing_go_ahead_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "standing_go_ahead" ADD CONSTRAINT "standing_go_ahead_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "attempt" ADD CONSTRAINT "attempt_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "attempt" ADD CONSTRAINT "attempt_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "attempt" ADD CONSTRAINT "attempt_concern_id_fkey" FOREIGN KEY ("shop_id", "concern_id") REFERENCES "concern" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "attempt" ADD CONSTRAINT "attempt_place_id_fkey" FOREIGN KEY ("shop_id", "place_id") REFERENCES "place" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "cause" ADD CONSTRAINT "cause_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "cause" ADD CONSTRAINT "cause_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "cause_concern" ADD CONSTRAINT "cause_concern_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "cause_concern" ADD CONSTRAINT "cause_concern_cause_id_fkey" FOREIGN KEY ("shop_id", "cause_id") REFERENCES "cause" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "cause_concern" ADD CONSTRAINT "cause_concern_concern_id_fkey" FOREIGN KEY ("shop_id", "concern_id") REFERENCES "concern" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "call" ADD CONSTRAINT "call_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "call" ADD CONSTRAINT "call_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "call" ADD CONSTRAINT "call_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "call" ADD CONSTRAINT "call_follow_up_id_fkey" FOREIGN KEY ("shop_id", "follow_up_id") REFERENCES "follow_up" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "call" ADD CONSTRAINT "call_customer_id_fkey" FOREIGN KEY ("shop_id", "customer_id") REFERENCES "customer" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "contact_entry" ADD CONSTRAINT "contact_entry_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "contact_entry" ADD CONSTRAINT "contact_entry_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "contact_entry" ADD CONSTRAINT "contact_entry_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "contact_entry" ADD CONSTRAINT "contact_entry_follow_up_id_fkey" FOREIGN KEY ("shop_id", "follow_up_id") REFERENCES "follow_up" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "contact_entry" ADD CONSTRAINT "contact_entry_call_id_fkey" FOREIGN KEY ("shop_id", "call_id") REFERENCES "call" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "contact_entry" ADD CONSTRAINT "contact_entry_contact_id_fkey" FOREIGN KEY ("shop_id", "contact_id") REFERENCES "contact" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "vehicle_correction" ADD CONSTRAINT "vehicle_correction_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "vehicle_correction" ADD CONSTRAINT "vehicle_correction_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "wheel_record" ADD CONSTRAINT "wheel_record_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "wheel_record" ADD CONSTRAINT "wheel_record_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "wheel_record" ADD CONSTRAINT "wheel_record_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "wheel_record" ADD CONSTRAINT "wheel_record_line_id_fkey" FOREIGN KEY ("shop_id", "line_id") REFERENCES "work_line" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "wheel_record" ADD CONSTRAINT "wheel_record_off_by_id_fkey" FOREIGN KEY ("shop_id", "off_by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "wheel_record" ADD CONSTRAINT "wheel_record_on_by_id_fkey" FOREIGN KEY ("shop_id", "on_by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "wheel_record" ADD CONSTRAINT "wheel_record_torqued_by_id_fkey" FOREIGN KEY ("shop_id", "torqued_by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "sublet" ADD CONSTRAINT "sublet_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "sublet" ADD CONSTRAINT "sublet_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "sublet" ADD CONSTRAINT "sublet_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "sublet" ADD CONSTRAINT "sublet_line_id_fkey" FOREIGN KEY ("shop_id", "line_id") REFERENCES "work_line" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "sublet" ADD CONSTRAINT "sublet_supplier_id_fkey" FOREIGN KEY ("shop_id", "supplier_id") REFERENCES "supplier" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "question" ADD CONSTRAINT "question_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "question" ADD CONSTRAINT "question_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "question" ADD CONSTRAINT "question_line_id_fkey" FOREIGN KEY ("shop_id", "line_id") REFERENCES "work_line" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "question" ADD CONSTRAINT "question_asked_by_id_fkey" FOREIGN KEY ("shop_id", "asked_by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "question" ADD CONSTRAINT "question_to_id_fkey" FOREIGN KEY ("shop_id", "to_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "question" ADD CONSTRAINT "question_answered_by_id_fkey" FOREIGN KEY ("shop_id", "answered_by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "work_line" ADD CONSTRAINT "work_line_cause_id_fkey" FOREIGN KEY ("shop_id", "cause_id") REFERENCES "cause" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "work_line" ADD CONSTRAINT "work_line_standing_id_fkey" FOREIGN KEY ("shop_id", "standing_id") REFERENCES "standing_go_ahead" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "go_ahead" ADD CONSTRAINT "go_ahead_standing_id_fkey" FOREIGN KEY ("shop_id", "standing_id") REFERENCES "standing_go_ahead" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "place" ADD CONSTRAINT "place_driver_id_fkey" FOREIGN KEY ("shop_id", "driver_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "place" ADD CONSTRAINT "place_sublet_id_fkey" FOREIGN KEY ("shop_id", "sublet_id") REFERENCES "sublet" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "hold" ADD CONSTRAINT "hold_sublet_id_fkey" FOREIGN KEY ("shop_id", "sublet_id") REFERENCES "sublet" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- One visit of a vehicle on the premises at a time; any number may be expected.
DROP INDEX "job_open_once";
CREATE UNIQUE INDEX "job_open_once" ON "job" ("shop_id", "vehicle_id") WHERE ("ended_at" IS NULL AND "arrived_at" IS NOT NULL AND NOT "void");
CREATE INDEX "job_shop_id_expected_at_idx" ON "job" ("shop_id", "expected_at");

-- The log grows in the order of its time: a block range index finds a day in it, and costs a command next to nothing.
DROP INDEX "change_shop_id_recorded_at_idx";
DROP INDEX "change_rows_shop_id_recorded_at_idx";
DROP INDEX "answer_shop_id_recorded_at_idx";
CREATE INDEX "change_recorded_at_idx" ON "change" USING brin ("recorded_at");
CREATE INDEX "change_rows_recorded_at_idx" ON "change_rows" USING brin ("recorded_at");
CREATE INDEX "answer_recorded_at_idx" ON "answer" USING brin ("recorded_at");

-- What stood before: every visit had been checked in, every end was a hand-back. The wall is for the application alone,
-- and its force would hide the rows from the owner too.
ALTER TABLE "job" NO FORCE ROW LEVEL SECURITY;
UPDATE "job" SET "arrived_at" = "checked_in_at", "ended_how" = CASE WHEN "ended_at" IS NULL THEN NULL ELSE 'handedBack' END;
ALTER TABLE "job" FORCE ROW LEVEL SECURITY;

DO $$
DECLARE t text;
BEGIN
  FOREACH t IN ARRAY ARRAY['standing_go_ahead', 'attempt', 'cause', 'cause_concern', 'call', 'contact_entry', 'vehicle_correction', 'wheel_record', 'sublet', 'question'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', t);
    EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', t);
    EXECUTE format('CREATE POLICY shop_wall ON %I AS RESTRICTIVE TO holdfast_app USING (shop_id = (SELECT app.shop_id())) WITH CHECK (shop_id = (SELECT app.shop_id()))', t);
    EXECUTE format('CREATE POLICY staff ON %I TO holdfast_app USING (true) WITH CHECK (true)', t);
    EXECUTE format('GRANT SELECT, INSERT, UPDATE ON %I TO holdfast_app', t);
  END LOOP;
END $$;
