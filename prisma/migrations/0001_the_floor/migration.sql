-- Holdfast: first migration. Every key starts with the shop; every foreign key carries it; rows are ended or void, never deleted.
CREATE EXTENSION IF NOT EXISTS btree_gist;
CREATE SCHEMA IF NOT EXISTS app;
CREATE SCHEMA IF NOT EXISTS directory;

-- After a transaction the setting is '' on a pooled connection, not NULL: nullif makes that deny instead of fail.
CREATE FUNCTION app.shop_id() RETURNS uuid STABLE LANGUAGE sql AS $$ SELECT nullif(current_setting('app.shop_id', true), '')::uuid $$;

CREATE TABLE "shop" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "name" text NOT NULL,
  "zone" text NOT NULL,
  "currency" text NOT NULL,
  "units" text NOT NULL CHECK ("units" IN ('metric', 'us')),
  "locale" text NOT NULL CHECK ("locale" IN ('en-GB', 'en-US')),
  CONSTRAINT "shop_pkey" PRIMARY KEY ("shop_id", "id")
);

CREATE TABLE "shop_setting" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "valid_from" date NOT NULL,
  "grace_minutes" integer NOT NULL,
  "tolerance_percent" numeric NOT NULL,
  "floor_records_go_aheads" boolean NOT NULL,
  "recheck_minutes" integer,
  CONSTRAINT "shop_setting_pkey" PRIMARY KEY ("shop_id", "id")
);

CREATE TABLE "opening_hours" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "valid_from" date NOT NULL,
  "week" jsonb NOT NULL,
  "breaks" jsonb NOT NULL,
  CONSTRAINT "opening_hours_pkey" PRIMARY KEY ("shop_id", "id")
);

CREATE TABLE "season" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "name" text NOT NULL,
  "from_day" text NOT NULL,
  "to_day" text NOT NULL,
  "valid_from" date NOT NULL,
  "ended_on" date,
  CONSTRAINT "season_pkey" PRIMARY KEY ("shop_id", "id")
);

CREATE TABLE "person" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "name" text NOT NULL,
  "roles" jsonb NOT NULL,
  "home_bay_id" uuid,
  "active" boolean NOT NULL,
  CONSTRAINT "person_pkey" PRIMARY KEY ("shop_id", "id")
);

CREATE TABLE "person_skill" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "person_id" uuid NOT NULL,
  "skill" text NOT NULL,
  "until" date,
  CONSTRAINT "person_skill_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "person_skill_shop_id_person_id_idx" ON "person_skill" ("shop_id", "person_id");

CREATE TABLE "person_hours" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "person_id" uuid NOT NULL,
  "valid_from" date NOT NULL,
  "week" jsonb NOT NULL,
  "breaks" jsonb NOT NULL,
  CONSTRAINT "person_hours_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "person_hours_shop_id_person_id_idx" ON "person_hours" ("shop_id", "person_id");

CREATE TABLE "bay" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "name" text NOT NULL,
  "position" integer NOT NULL,
  "ended_on" date,
  CONSTRAINT "bay_pkey" PRIMARY KEY ("shop_id", "id")
);

CREATE TABLE "bay_spec" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "bay_id" uuid NOT NULL,
  "valid_from" date NOT NULL,
  "spots" integer NOT NULL,
  "equipment" jsonb NOT NULL,
  "capacity" numeric,
  "capacity_unit" text NOT NULL CHECK ("capacity_unit" IN ('kg', 'lb')),
  "max_length_mm" integer,
  "max_height_mm" integer,
  "max_wheelbase_mm" integer,
  "inspected_on" date,
  "inspection_outcome" text CHECK ("inspection_outcome" IN ('passed', 'failed')),
  "inspection_interval_months" integer,
  "out_of_use" boolean NOT NULL,
  "out_of_use_words" text,
  CONSTRAINT "bay_spec_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "bay_spec_shop_id_bay_id_idx" ON "bay_spec" ("shop_id", "bay_id");

CREATE TABLE "supplier" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "name" text NOT NULL,
  "phone" text,
  "mail" text,
  "cut_off" text,
  "runs" jsonb,
  CONSTRAINT "supplier_pkey" PRIMARY KEY ("shop_id", "id")
);

CREATE TABLE "counter" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "name" text NOT NULL,
  "value" integer NOT NULL,
  CONSTRAINT "counter_pkey" PRIMARY KEY ("shop_id", "id")
);

CREATE TABLE "customer" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "name" text NOT NULL,
  "name_key" text NOT NULL,
  "fleet" text,
  "erased_at" timestamptz(3),
  CONSTRAINT "customer_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "customer_shop_id_name_key_idx" ON "customer" ("shop_id", "name_key");

CREATE TABLE "contact" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "customer_id" uuid NOT NULL,
  "name" text NOT NULL,
  "phone" text,
  "mail" text,
  "may_bring" boolean NOT NULL,
  "may_agree_up_to" numeric,
  "may_agree_any" boolean NOT NULL,
  "may_collect" boolean NOT NULL,
  CONSTRAINT "contact_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "contact_shop_id_customer_id_idx" ON "contact" ("shop_id", "customer_id");

CREATE TABLE "vehicle" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "customer_id" uuid,
  "plate" text NOT NULL,
  "plate_key" text NOT NULL,
  "vin" text,
  "description" text NOT NULL,
  "kind" text NOT NULL CHECK ("kind" IN ('light', 'heavy', 'trailer', 'motorcycle')),
  "drive" text NOT NULL CHECK ("drive" IN ('combustion', 'hybrid', 'electric', 'gas', 'none')),
  "curb_kg" integer,
  "curb_source" text CHECK ("curb_source" IN ('plate', 'papers', 'weighed', 'maker', 'told')),
  "gross_kg" integer,
  "gross_source" text CHECK ("gross_source" IN ('plate', 'papers', 'weighed', 'maker', 'told')),
  "weighed_kg" integer,
  "rolls" boolean NOT NULL,
  "may_be_driven" boolean NOT NULL,
  "notes" text,
  CONSTRAINT "vehicle_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "vehicle_shop_id_customer_id_idx" ON "vehicle" ("shop_id", "customer_id");
CREATE INDEX "vehicle_shop_id_plate_key_idx" ON "vehicle" ("shop_id", "plate_key");
CREATE INDEX "vehicle_shop_id_vin_idx" ON "vehicle" ("shop_id", "vin");

CREATE TABLE "odometer_reading" (
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
  "value" integer,
  "unit" text NOT NULL CHECK ("unit" IN ('km', 'mi')),
  "source" text NOT NULL CHECK ("source" IN ('read', 'told', 'notReadable')),
  "doubtful" boolean NOT NULL,
  CONSTRAINT "odometer_reading_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "odometer_reading_shop_id_job_id_idx" ON "odometer_reading" ("shop_id", "job_id");
CREATE INDEX "odometer_reading_shop_id_vehicle_id_idx" ON "odometer_reading" ("shop_id", "vehicle_id");

CREATE TABLE "caution" (
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
  "standing" boolean NOT NULL,
  "code" text NOT NULL CHECK ("code" IN ('liftingPoint', 'electricDrive', 'gasTank', 'highVoltageLive', 'highVoltageDead', 'airbagUnplugged', 'fuelOpen', 'brakesOpen', 'noOil', 'wheelsNotTorqued', 'batteryOff', 'onStands', 'hotWork', 'doNotStart', 'doNotMove', 'other')),
  "words" text,
  "second_id" uuid,
  "opened_by_id" uuid NOT NULL,
  "ended_at" timestamptz(3),
  "ended_by_id" uuid,
  "end_words" text,
  CONSTRAINT "caution_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "caution_shop_id_job_id_idx" ON "caution" ("shop_id", "job_id");
CREATE INDEX "caution_shop_id_vehicle_id_idx" ON "caution" ("shop_id", "vehicle_id");

CREATE TABLE "job" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "number" integer NOT NULL,
  "vehicle_id" uuid NOT NULL,
  "customer_id" uuid,
  "contact_id" uuid,
  "kind" text NOT NULL CHECK ("kind" IN ('normal', 'comeback', 'guarantee', 'internal')),
  "comeback_of_line_id" uuid,
  "checked_in_at" timestamptz(3) NOT NULL,
  "promised_at" timestamptz(3),
  "waits_here" boolean NOT NULL,
  "key_tag" text,
  "board_note" text,
  "odometer_in" integer,
  "odometer_out" integer,
  "odometer_unit" text NOT NULL CHECK ("odometer_unit" IN ('km', 'mi')),
  "stored_here" boolean NOT NULL,
  "ended_at" timestamptz(3),
  "left_by" text CHECK ("left_by" IN ('road', 'transporter')),
  CONSTRAINT "job_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE UNIQUE INDEX "job_shop_id_number_key" ON "job" ("shop_id", "number");
-- One visit per vehicle at a time: rule "one job per vehicle on the premises".
CREATE UNIQUE INDEX "job_open_once" ON "job" ("shop_id", "vehicle_id") WHERE ("ended_at" IS NULL AND NOT "void");
CREATE INDEX "job_shop_id_vehicle_id_idx" ON "job" ("shop_id", "vehicle_id");
CREATE INDEX "job_shop_id_customer_id_idx" ON "job" ("shop_id", "customer_id");
CREATE INDEX "job_shop_id_ended_at_idx" ON "job" ("shop_id", "ended_at");

CREATE TABLE "concern" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "job_id" uuid NOT NULL,
  "position" integer NOT NULL,
  "words" text NOT NULL,
  "conditions" text,
  "outcome" text CHECK ("outcome" IN ('gone', 'stillThere', 'couldNotAppear', 'notTried')),
  "outcome_conditions" text,
  "outcome_words" text,
  "outcome_at" timestamptz(3),
  "outcome_by_id" uuid,
  CONSTRAINT "concern_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "concern_shop_id_job_id_idx" ON "concern" ("shop_id", "job_id");

CREATE TABLE "finding" (
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
  "concern_id" uuid,
  "place" text NOT NULL,
  "place_key" text NOT NULL,
  "kind" text NOT NULL CHECK ("kind" IN ('fault', 'wear', 'toWatch', 'nothingFound', 'couldNotBeChecked')),
  "words" text,
  "measure" numeric,
  "unit" text,
  CONSTRAINT "finding_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "finding_shop_id_job_id_idx" ON "finding" ("shop_id", "job_id");
CREATE INDEX "finding_shop_id_vehicle_id_idx" ON "finding" ("shop_id", "vehicle_id");
CREATE INDEX "finding_shop_id_vehicle_id_place_key_idx" ON "finding" ("shop_id", "vehicle_id", "place_key");

CREATE TABLE "photo" (
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
  "finding_id" uuid,
  "temporary_fix_id" uuid,
  "content" text NOT NULL,
  "width" integer NOT NULL,
  "height" integer NOT NULL,
  "caption" text,
  "moment" text NOT NULL CHECK ("moment" IN ('walkRound', 'before', 'after', 'other')),
  "shows_people" boolean NOT NULL,
  CONSTRAINT "photo_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "photo_shop_id_job_id_idx" ON "photo" ("shop_id", "job_id");
CREATE INDEX "photo_shop_id_vehicle_id_idx" ON "photo" ("shop_id", "vehicle_id");
CREATE INDEX "photo_shop_id_temporary_fix_id_idx" ON "photo" ("shop_id", "temporary_fix_id");

CREATE TABLE "sheet" (
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
  "content" jsonb NOT NULL,
  "received_by" text NOT NULL,
  "received_how" text NOT NULL CHECK ("received_how" IN ('there', 'telephone')),
  "leaves_by" text NOT NULL CHECK ("leaves_by" IN ('road', 'transporter')),
  "voided_words" text,
  CONSTRAINT "sheet_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "sheet_shop_id_job_id_idx" ON "sheet" ("shop_id", "job_id");
CREATE INDEX "sheet_shop_id_vehicle_id_idx" ON "sheet" ("shop_id", "vehicle_id");

CREATE TABLE "work_line" (
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
  "position" integer NOT NULL,
  "title" text NOT NULL,
  "book_minutes" integer,
  "equipment" text,
  "skill" text,
  "payer" text NOT NULL CHECK ("payer" IN ('customer', 'guarantee', 'insurer', 'shop', 'supplier')),
  "concern_id" uuid,
  "finding_id" uuid,
  "price" numeric,
  "choice_id" text,
  "after_line_id" uuid,
  "progress" text NOT NULL CHECK ("progress" IN ('planned', 'started', 'stopped', 'done', 'carriedOver', 'dropped')),
  "go_ahead" text NOT NULL CHECK ("go_ahead" IN ('withCustomer', 'given', 'deferred', 'declined')),
  "go_ahead_up_to" numeric,
  "from_follow_up_id" uuid,
  "to_follow_up_id" uuid,
  "started_at" timestamptz(3),
  "ended_at" timestamptz(3),
  "end_words" text,
  "handover" text,
  CONSTRAINT "work_line_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "work_line_shop_id_job_id_idx" ON "work_line" ("shop_id", "job_id");
CREATE INDEX "work_line_shop_id_vehicle_id_idx" ON "work_line" ("shop_id", "vehicle_id");

CREATE TABLE "go_ahead" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "job_id" uuid NOT NULL,
  "line_id" uuid NOT NULL,
  "answer" text NOT NULL CHECK ("answer" IN ('withCustomer', 'given', 'deferred', 'declined')),
  "by_name" text,
  "how" text CHECK ("how" IN ('there', 'telephone', 'message', 'standing', 'shop')),
  "up_to" numeric,
  "words" text,
  CONSTRAINT "go_ahead_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "go_ahead_shop_id_job_id_idx" ON "go_ahead" ("shop_id", "job_id");
CREATE INDEX "go_ahead_shop_id_line_id_idx" ON "go_ahead" ("shop_id", "line_id");

CREATE TABLE "clock" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "job_id" uuid NOT NULL,
  "line_id" uuid NOT NULL,
  "person_id" uuid NOT NULL,
  "bench" boolean NOT NULL,
  "from_at" timestamptz(3) NOT NULL,
  "to_at" timestamptz(3),
  CONSTRAINT "clock_pkey" PRIMARY KEY ("shop_id", "id"),
  "during" tstzrange GENERATED ALWAYS AS (tstzrange("from_at", "to_at", '[)')) STORED,
  CONSTRAINT "clock_ends_after_start" CHECK ("to_at" IS NULL OR "to_at" > "from_at"),
  CONSTRAINT "clock_once" EXCLUDE USING gist ("shop_id" WITH =, "person_id" WITH =, "during" WITH &&) WHERE (NOT "void") DEFERRABLE INITIALLY IMMEDIATE
);
CREATE INDEX "clock_shop_id_job_id_from_at_idx" ON "clock" ("shop_id", "job_id", "from_at");
CREATE INDEX "clock_shop_id_line_id_from_at_idx" ON "clock" ("shop_id", "line_id", "from_at");
CREATE INDEX "clock_shop_id_person_id_from_at_idx" ON "clock" ("shop_id", "person_id", "from_at");
CREATE INDEX "clock_shop_id_from_at_idx" ON "clock" ("shop_id", "from_at");

CREATE TABLE "place" (
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
  "kind" text NOT NULL CHECK ("kind" IN ('yard', 'bay', 'roadTest', 'away')),
  "bay_id" uuid,
  "spot" integer,
  "yard_spot" text,
  "moved_how" text NOT NULL CHECK ("moved_how" IN ('rolled', 'driven', 'dollies', 'towed')),
  "moved_by_name" text,
  "loaded" boolean,
  "load_kg" integer,
  "load_answered_by_id" uuid,
  "from_at" timestamptz(3) NOT NULL,
  "to_at" timestamptz(3),
  CONSTRAINT "place_pkey" PRIMARY KEY ("shop_id", "id"),
  "during" tstzrange GENERATED ALWAYS AS (tstzrange("from_at", "to_at", '[)')) STORED,
  CONSTRAINT "place_ends_after_start" CHECK ("to_at" IS NULL OR "to_at" > "from_at"),
  CONSTRAINT "place_once" EXCLUDE USING gist ("shop_id" WITH =, "vehicle_id" WITH =, "during" WITH &&) WHERE (NOT "void") DEFERRABLE INITIALLY IMMEDIATE
);
CREATE INDEX "place_shop_id_job_id_from_at_idx" ON "place" ("shop_id", "job_id", "from_at");
CREATE INDEX "place_shop_id_vehicle_id_from_at_idx" ON "place" ("shop_id", "vehicle_id", "from_at");
CREATE INDEX "place_shop_id_bay_id_from_at_idx" ON "place" ("shop_id", "bay_id", "from_at");

CREATE TABLE "spot_use" (
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
  "bay_id" uuid NOT NULL,
  "spot" integer NOT NULL,
  "kind" text NOT NULL CHECK ("kind" IN ('stands', 'kept')),
  "from_at" timestamptz(3) NOT NULL,
  "to_at" timestamptz(3),
  CONSTRAINT "spot_use_pkey" PRIMARY KEY ("shop_id", "id"),
  "during" tstzrange GENERATED ALWAYS AS (tstzrange("from_at", "to_at", '[)')) STORED,
  CONSTRAINT "spot_use_ends_after_start" CHECK ("to_at" IS NULL OR "to_at" > "from_at"),
  CONSTRAINT "spot_use_once" EXCLUDE USING gist ("shop_id" WITH =, "bay_id" WITH =, "spot" WITH =, "during" WITH &&) WHERE (NOT "void") DEFERRABLE INITIALLY IMMEDIATE
);
CREATE INDEX "spot_use_shop_id_job_id_from_at_idx" ON "spot_use" ("shop_id", "job_id", "from_at");
CREATE INDEX "spot_use_shop_id_vehicle_id_from_at_idx" ON "spot_use" ("shop_id", "vehicle_id", "from_at");
CREATE INDEX "spot_use_shop_id_bay_id_from_at_idx" ON "spot_use" ("shop_id", "bay_id", "from_at");
CREATE INDEX "spot_use_shop_id_from_at_idx" ON "spot_use" ("shop_id", "from_at");

CREATE TABLE "report" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "kind" text NOT NULL CHECK ("kind" IN ('takeIntoBay', 'moveToYard', 'startWork', 'stopWork')),
  "job_id" uuid NOT NULL,
  "vehicle_id" uuid NOT NULL,
  "person_id" uuid,
  "bay_id" uuid,
  "said" jsonb NOT NULL,
  "against" jsonb NOT NULL,
  "state" text NOT NULL CHECK ("state" IN ('settled', 'contested', 'dismissed')),
  "settled_at" timestamptz(3),
  "settled_by_id" uuid,
  "settled_words" text,
  CONSTRAINT "report_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "report_shop_id_job_id_idx" ON "report" ("shop_id", "job_id");
CREATE INDEX "report_shop_id_vehicle_id_idx" ON "report" ("shop_id", "vehicle_id");
CREATE INDEX "report_shop_id_person_id_idx" ON "report" ("shop_id", "person_id");
CREATE INDEX "report_shop_id_bay_id_idx" ON "report" ("shop_id", "bay_id");
CREATE INDEX "report_shop_id_state_idx" ON "report" ("shop_id", "state");

CREATE TABLE "flag" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "rule" text NOT NULL,
  "job_id" uuid,
  "vehicle_id" uuid,
  "bay_id" uuid,
  "facts" jsonb NOT NULL,
  "cleared_at" timestamptz(3),
  "cleared_by_id" uuid,
  CONSTRAINT "flag_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "flag_shop_id_job_id_idx" ON "flag" ("shop_id", "job_id");
CREATE INDEX "flag_shop_id_vehicle_id_idx" ON "flag" ("shop_id", "vehicle_id");
CREATE INDEX "flag_shop_id_bay_id_idx" ON "flag" ("shop_id", "bay_id");

CREATE TABLE "hold" (
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
  "reason" text NOT NULL CHECK ("reason" IN ('parts', 'goAhead', 'sublet', 'information', 'tool', 'bay', 'technician', 'setting', 'conditions', 'assessor', 'collection', 'other')),
  "words" text,
  "move_of_id" uuid,
  "move_of" text,
  "ends_at" timestamptz(3),
  "opened_by_id" uuid,
  "from_at" timestamptz(3) NOT NULL,
  "to_at" timestamptz(3),
  "ended_how" text CHECK ("ended_how" IN ('byHand', 'partsHere', 'partsNoLongerNeeded', 'lineEnded', 'handedBack', 'goAheadAnswered')),
  "end_words" text,
  "ended_by_id" uuid,
  "again_of_id" uuid,
  CONSTRAINT "hold_pkey" PRIMARY KEY ("shop_id", "id"),
  CONSTRAINT "hold_ends_after_start" CHECK ("to_at" IS NULL OR "to_at" >= "from_at")
);
CREATE INDEX "hold_shop_id_job_id_idx" ON "hold" ("shop_id", "job_id");
CREATE INDEX "hold_shop_id_vehicle_id_idx" ON "hold" ("shop_id", "vehicle_id");
CREATE INDEX "hold_shop_id_from_at_idx" ON "hold" ("shop_id", "from_at");

CREATE TABLE "hold_line" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "hold_id" uuid NOT NULL,
  "job_id" uuid NOT NULL,
  "line_id" uuid NOT NULL,
  CONSTRAINT "hold_line_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "hold_line_shop_id_job_id_idx" ON "hold_line" ("shop_id", "job_id");
CREATE INDEX "hold_line_shop_id_hold_id_idx" ON "hold_line" ("shop_id", "hold_id");
CREATE INDEX "hold_line_shop_id_line_id_idx" ON "hold_line" ("shop_id", "line_id");

CREATE TABLE "hold_part" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "hold_id" uuid NOT NULL,
  "job_id" uuid NOT NULL,
  "part_line_id" uuid NOT NULL,
  CONSTRAINT "hold_part_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "hold_part_shop_id_job_id_idx" ON "hold_part" ("shop_id", "job_id");
CREATE INDEX "hold_part_shop_id_hold_id_idx" ON "hold_part" ("shop_id", "hold_id");
CREATE INDEX "hold_part_shop_id_part_line_id_idx" ON "hold_part" ("shop_id", "part_line_id");

CREATE TABLE "part_line" (
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
  "line_id" uuid,
  "follow_up_id" uuid,
  "number" text,
  "description" text NOT NULL,
  "quantity" numeric NOT NULL,
  "unit" text NOT NULL,
  "unit_price" numeric,
  "needed" text NOT NULL CHECK ("needed" IN ('beforeStart', 'beforeRefit', 'mayFollow')),
  "source" text NOT NULL CHECK ("source" IN ('supplier', 'stock', 'customersOwn', 'otherJob')),
  "supplier_id" uuid,
  "order_id" uuid,
  "state" text NOT NULL CHECK ("state" IN ('wanted', 'ordered', 'partArrived', 'arrived', 'fitted', 'cancelled')),
  "here" numeric NOT NULL,
  "fitted" numeric NOT NULL,
  "bin" text,
  "due_on" date,
  "due_state" text CHECK ("due_state" IN ('inStock', 'toOrder', 'backorderedWithDate', 'backorderedNoDate', 'specialOrder')),
  "end_words" text,
  "ended_at" timestamptz(3),
  CONSTRAINT "part_line_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "part_line_shop_id_job_id_idx" ON "part_line" ("shop_id", "job_id");
CREATE INDEX "part_line_shop_id_vehicle_id_idx" ON "part_line" ("shop_id", "vehicle_id");
CREATE INDEX "part_line_shop_id_line_id_idx" ON "part_line" ("shop_id", "line_id");
CREATE INDEX "part_line_shop_id_order_id_idx" ON "part_line" ("shop_id", "order_id");
CREATE INDEX "part_line_shop_id_supplier_id_idx" ON "part_line" ("shop_id", "supplier_id");
CREATE INDEX "part_line_shop_id_state_idx" ON "part_line" ("shop_id", "state");

CREATE TABLE "parts_order" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "supplier_id" uuid NOT NULL,
  "reference" text NOT NULL,
  "words" text,
  CONSTRAINT "parts_order_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "parts_order_shop_id_supplier_id_idx" ON "parts_order" ("shop_id", "supplier_id");

CREATE TABLE "due_in" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "part_line_id" uuid NOT NULL,
  "supplier_id" uuid,
  "state" text NOT NULL CHECK ("state" IN ('inStock', 'toOrder', 'backorderedWithDate', 'backorderedNoDate', 'specialOrder')),
  "due_on" date,
  "ordinal" integer NOT NULL,
  "words" text,
  CONSTRAINT "due_in_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "due_in_shop_id_part_line_id_idx" ON "due_in" ("shop_id", "part_line_id");
CREATE INDEX "due_in_shop_id_supplier_id_idx" ON "due_in" ("shop_id", "supplier_id");

CREATE TABLE "delivery" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "supplier_id" uuid,
  "order_id" uuid,
  "note" text,
  CONSTRAINT "delivery_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "delivery_shop_id_order_id_idx" ON "delivery" ("shop_id", "order_id");
CREATE INDEX "delivery_shop_id_supplier_id_idx" ON "delivery" ("shop_id", "supplier_id");

CREATE TABLE "arrival" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "delivery_id" uuid NOT NULL,
  "part_line_id" uuid NOT NULL,
  "quantity" numeric NOT NULL,
  "verdict" text NOT NULL CHECK ("verdict" IN ('good', 'accepted', 'damaged', 'wrong')),
  "found_at_vehicle" boolean NOT NULL,
  "bin" text,
  "words" text,
  CONSTRAINT "arrival_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "arrival_shop_id_part_line_id_idx" ON "arrival" ("shop_id", "part_line_id");
CREATE INDEX "arrival_shop_id_delivery_id_idx" ON "arrival" ("shop_id", "delivery_id");

CREATE TABLE "temporary_fix" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "vehicle_id" uuid NOT NULL,
  "job_id" uuid NOT NULL,
  "line_id" uuid,
  "kind" text NOT NULL CHECK ("kind" IN ('standIn', 'heldBy', 'leftOff', 'leftOpen', 'leftAsFound')),
  "stands_in_for" text NOT NULL,
  "place" text NOT NULL,
  "held_with" text,
  "system" text NOT NULL CHECK ("system" IN ('brakes', 'steering', 'restraints', 'fuel', 'highVoltage', 'wheelsTyres', 'structure', 'suspension', 'lighting', 'driverAssistance', 'latches', 'glass', 'exhaust', 'towing', 'cooling', 'mayDrop', 'body', 'trim', 'electrical', 'engine', 'transmission', 'comfort', 'other')),
  "since" timestamptz(3) NOT NULL,
  "before_day" date,
  "before_odometer" integer,
  "within_distance" integer,
  "within_days" integer,
  "season_id" uuid,
  "distance_unit" text NOT NULL CHECK ("distance_unit" IN ('km', 'mi')),
  "ended_by_what" text NOT NULL,
  "removed_piece_at" text,
  "follow_up_id" uuid,
  "state" text NOT NULL CHECK ("state" IN ('on', 'failed', 'removed', 'ended')),
  "ended_how" text CHECK ("ended_how" IN ('repaired', 'mendedElsewhere', 'vehicleGone', 'ownerRefuses')),
  "told_how" text CHECK ("told_how" IN ('told', 'seen', 'signed')),
  "end_line_id" uuid,
  "end_words" text,
  "ended_at" timestamptz(3),
  "ended_by_id" uuid,
  "road_allowed_by_id" uuid,
  "road_allowed_words" text,
  "receiver_signed" boolean NOT NULL,
  CONSTRAINT "temporary_fix_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "temporary_fix_shop_id_job_id_idx" ON "temporary_fix" ("shop_id", "job_id");
CREATE INDEX "temporary_fix_shop_id_vehicle_id_idx" ON "temporary_fix" ("shop_id", "vehicle_id");
CREATE INDEX "temporary_fix_shop_id_line_id_idx" ON "temporary_fix" ("shop_id", "line_id");
CREATE INDEX "temporary_fix_shop_id_state_id_idx" ON "temporary_fix" ("shop_id", "state", "id");

CREATE TABLE "second_check" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "temporary_fix_id" uuid NOT NULL,
  "vehicle_id" uuid NOT NULL,
  "person_id" uuid NOT NULL,
  "same_person" boolean NOT NULL,
  "words" text,
  CONSTRAINT "second_check_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "second_check_shop_id_vehicle_id_idx" ON "second_check" ("shop_id", "vehicle_id");
CREATE INDEX "second_check_shop_id_temporary_fix_id_idx" ON "second_check" ("shop_id", "temporary_fix_id");
CREATE INDEX "second_check_shop_id_person_id_idx" ON "second_check" ("shop_id", "person_id");

CREATE TABLE "follow_up" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "version" integer NOT NULL,
  "void" boolean NOT NULL DEFAULT false,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "by_id" uuid,
  "device" text,
  "vehicle_id" uuid NOT NULL,
  "from_job_id" uuid,
  "kind" text NOT NULL CHECK ("kind" IN ('permanentRepair', 'carriedOver', 'deferred', 'lookAgain', 'question', 'service')),
  "title" text NOT NULL,
  "words" text,
  "urgency" text NOT NULL CHECK ("urgency" IN ('urgent', 'soon', 'whenItSuits')),
  "line_id" uuid,
  "remaining_minutes" integer,
  "needs_go_ahead" boolean NOT NULL,
  "needs_follow_up_id" uuid,
  "before_day" date,
  "before_odometer" integer,
  "within_distance" integer,
  "within_days" integer,
  "season_id" uuid,
  "distance_unit" text NOT NULL CHECK ("distance_unit" IN ('km', 'mi')),
  "state" text NOT NULL CHECK ("state" IN ('open', 'done', 'dropped')),
  "closed_at" timestamptz(3),
  "closed_by_id" uuid,
  "close_words" text,
  "close_line_id" uuid,
  CONSTRAINT "follow_up_pkey" PRIMARY KEY ("shop_id", "id")
);
CREATE INDEX "follow_up_shop_id_vehicle_id_idx" ON "follow_up" ("shop_id", "vehicle_id");
CREATE INDEX "follow_up_shop_id_line_id_idx" ON "follow_up" ("shop_id", "line_id");
CREATE INDEX "follow_up_shop_id_state_id_idx" ON "follow_up" ("shop_id", "state", "id");

-- Exclusion constraints are deferrable so that they are checked after each statement, not after each row: a take back voids one
-- stay and opens another in one statement.
-- Foreign keys, checked at the end of the transaction: a command updates rows before it inserts those they name.
ALTER TABLE "person" ADD CONSTRAINT "person_home_bay_id_fkey" FOREIGN KEY ("shop_id", "home_bay_id") REFERENCES "bay" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "person_skill" ADD CONSTRAINT "person_skill_person_id_fkey" FOREIGN KEY ("shop_id", "person_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "person_hours" ADD CONSTRAINT "person_hours_person_id_fkey" FOREIGN KEY ("shop_id", "person_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "bay_spec" ADD CONSTRAINT "bay_spec_bay_id_fkey" FOREIGN KEY ("shop_id", "bay_id") REFERENCES "bay" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "contact" ADD CONSTRAINT "contact_customer_id_fkey" FOREIGN KEY ("shop_id", "customer_id") REFERENCES "customer" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "vehicle" ADD CONSTRAINT "vehicle_customer_id_fkey" FOREIGN KEY ("shop_id", "customer_id") REFERENCES "customer" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "odometer_reading" ADD CONSTRAINT "odometer_reading_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "odometer_reading" ADD CONSTRAINT "odometer_reading_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "odometer_reading" ADD CONSTRAINT "odometer_reading_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "caution" ADD CONSTRAINT "caution_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "caution" ADD CONSTRAINT "caution_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "caution" ADD CONSTRAINT "caution_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "caution" ADD CONSTRAINT "caution_second_id_fkey" FOREIGN KEY ("shop_id", "second_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "caution" ADD CONSTRAINT "caution_opened_by_id_fkey" FOREIGN KEY ("shop_id", "opened_by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "caution" ADD CONSTRAINT "caution_ended_by_id_fkey" FOREIGN KEY ("shop_id", "ended_by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "job" ADD CONSTRAINT "job_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "job" ADD CONSTRAINT "job_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "job" ADD CONSTRAINT "job_customer_id_fkey" FOREIGN KEY ("shop_id", "customer_id") REFERENCES "customer" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "job" ADD CONSTRAINT "job_contact_id_fkey" FOREIGN KEY ("shop_id", "contact_id") REFERENCES "contact" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "job" ADD CONSTRAINT "job_comeback_of_line_id_fkey" FOREIGN KEY ("shop_id", "comeback_of_line_id") REFERENCES "work_line" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "concern" ADD CONSTRAINT "concern_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "concern" ADD CONSTRAINT "concern_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "concern" ADD CONSTRAINT "concern_outcome_by_id_fkey" FOREIGN KEY ("shop_id", "outcome_by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "finding" ADD CONSTRAINT "finding_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "finding" ADD CONSTRAINT "finding_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "finding" ADD CONSTRAINT "finding_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "finding" ADD CONSTRAINT "finding_concern_id_fkey" FOREIGN KEY ("shop_id", "concern_id") REFERENCES "concern" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "photo" ADD CONSTRAINT "photo_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "photo" ADD CONSTRAINT "photo_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "photo" ADD CONSTRAINT "photo_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "photo" ADD CONSTRAINT "photo_finding_id_fkey" FOREIGN KEY ("shop_id", "finding_id") REFERENCES "finding" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "photo" ADD CONSTRAINT "photo_temporary_fix_id_fkey" FOREIGN KEY ("shop_id", "temporary_fix_id") REFERENCES "temporary_fix" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "sheet" ADD CONSTRAINT "sheet_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "sheet" ADD CONSTRAINT "sheet_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "sheet" ADD CONSTRAINT "sheet_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "work_line" ADD CONSTRAINT "work_line_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "work_line" ADD CONSTRAINT "work_line_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "work_line" ADD CONSTRAINT "work_line_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "work_line" ADD CONSTRAINT "work_line_concern_id_fkey" FOREIGN KEY ("shop_id", "concern_id") REFERENCES "concern" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "work_line" ADD CONSTRAINT "work_line_finding_id_fkey" FOREIGN KEY ("shop_id", "finding_id") REFERENCES "finding" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "work_line" ADD CONSTRAINT "work_line_after_line_id_fkey" FOREIGN KEY ("shop_id", "after_line_id") REFERENCES "work_line" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "work_line" ADD CONSTRAINT "work_line_from_follow_up_id_fkey" FOREIGN KEY ("shop_id", "from_follow_up_id") REFERENCES "follow_up" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "work_line" ADD CONSTRAINT "work_line_to_follow_up_id_fkey" FOREIGN KEY ("shop_id", "to_follow_up_id") REFERENCES "follow_up" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "go_ahead" ADD CONSTRAINT "go_ahead_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "go_ahead" ADD CONSTRAINT "go_ahead_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "go_ahead" ADD CONSTRAINT "go_ahead_line_id_fkey" FOREIGN KEY ("shop_id", "line_id") REFERENCES "work_line" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "clock" ADD CONSTRAINT "clock_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "clock" ADD CONSTRAINT "clock_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "clock" ADD CONSTRAINT "clock_line_id_fkey" FOREIGN KEY ("shop_id", "line_id") REFERENCES "work_line" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "clock" ADD CONSTRAINT "clock_person_id_fkey" FOREIGN KEY ("shop_id", "person_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "place" ADD CONSTRAINT "place_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "place" ADD CONSTRAINT "place_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "place" ADD CONSTRAINT "place_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "place" ADD CONSTRAINT "place_bay_id_fkey" FOREIGN KEY ("shop_id", "bay_id") REFERENCES "bay" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "place" ADD CONSTRAINT "place_load_answered_by_id_fkey" FOREIGN KEY ("shop_id", "load_answered_by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "spot_use" ADD CONSTRAINT "spot_use_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "spot_use" ADD CONSTRAINT "spot_use_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "spot_use" ADD CONSTRAINT "spot_use_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "spot_use" ADD CONSTRAINT "spot_use_bay_id_fkey" FOREIGN KEY ("shop_id", "bay_id") REFERENCES "bay" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "report" ADD CONSTRAINT "report_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "report" ADD CONSTRAINT "report_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "report" ADD CONSTRAINT "report_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "report" ADD CONSTRAINT "report_person_id_fkey" FOREIGN KEY ("shop_id", "person_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "report" ADD CONSTRAINT "report_bay_id_fkey" FOREIGN KEY ("shop_id", "bay_id") REFERENCES "bay" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "report" ADD CONSTRAINT "report_settled_by_id_fkey" FOREIGN KEY ("shop_id", "settled_by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "flag" ADD CONSTRAINT "flag_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "flag" ADD CONSTRAINT "flag_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "flag" ADD CONSTRAINT "flag_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "flag" ADD CONSTRAINT "flag_bay_id_fkey" FOREIGN KEY ("shop_id", "bay_id") REFERENCES "bay" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "flag" ADD CONSTRAINT "flag_cleared_by_id_fkey" FOREIGN KEY ("shop_id", "cleared_by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "hold" ADD CONSTRAINT "hold_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "hold" ADD CONSTRAINT "hold_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "hold" ADD CONSTRAINT "hold_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "hold" ADD CONSTRAINT "hold_move_of_id_fkey" FOREIGN KEY ("shop_id", "move_of_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "hold" ADD CONSTRAINT "hold_opened_by_id_fkey" FOREIGN KEY ("shop_id", "opened_by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "hold" ADD CONSTRAINT "hold_ended_by_id_fkey" FOREIGN KEY ("shop_id", "ended_by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "hold" ADD CONSTRAINT "hold_again_of_id_fkey" FOREIGN KEY ("shop_id", "again_of_id") REFERENCES "hold" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "hold_line" ADD CONSTRAINT "hold_line_hold_id_fkey" FOREIGN KEY ("shop_id", "hold_id") REFERENCES "hold" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "hold_line" ADD CONSTRAINT "hold_line_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "hold_line" ADD CONSTRAINT "hold_line_line_id_fkey" FOREIGN KEY ("shop_id", "line_id") REFERENCES "work_line" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "hold_part" ADD CONSTRAINT "hold_part_hold_id_fkey" FOREIGN KEY ("shop_id", "hold_id") REFERENCES "hold" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "hold_part" ADD CONSTRAINT "hold_part_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "hold_part" ADD CONSTRAINT "hold_part_part_line_id_fkey" FOREIGN KEY ("shop_id", "part_line_id") REFERENCES "part_line" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "part_line" ADD CONSTRAINT "part_line_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "part_line" ADD CONSTRAINT "part_line_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "part_line" ADD CONSTRAINT "part_line_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "part_line" ADD CONSTRAINT "part_line_line_id_fkey" FOREIGN KEY ("shop_id", "line_id") REFERENCES "work_line" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "part_line" ADD CONSTRAINT "part_line_follow_up_id_fkey" FOREIGN KEY ("shop_id", "follow_up_id") REFERENCES "follow_up" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "part_line" ADD CONSTRAINT "part_line_supplier_id_fkey" FOREIGN KEY ("shop_id", "supplier_id") REFERENCES "supplier" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "part_line" ADD CONSTRAINT "part_line_order_id_fkey" FOREIGN KEY ("shop_id", "order_id") REFERENCES "parts_order" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "parts_order" ADD CONSTRAINT "parts_order_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "parts_order" ADD CONSTRAINT "parts_order_supplier_id_fkey" FOREIGN KEY ("shop_id", "supplier_id") REFERENCES "supplier" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "due_in" ADD CONSTRAINT "due_in_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "due_in" ADD CONSTRAINT "due_in_part_line_id_fkey" FOREIGN KEY ("shop_id", "part_line_id") REFERENCES "part_line" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "due_in" ADD CONSTRAINT "due_in_supplier_id_fkey" FOREIGN KEY ("shop_id", "supplier_id") REFERENCES "supplier" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "delivery" ADD CONSTRAINT "delivery_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "delivery" ADD CONSTRAINT "delivery_supplier_id_fkey" FOREIGN KEY ("shop_id", "supplier_id") REFERENCES "supplier" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "delivery" ADD CONSTRAINT "delivery_order_id_fkey" FOREIGN KEY ("shop_id", "order_id") REFERENCES "parts_order" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "arrival" ADD CONSTRAINT "arrival_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "arrival" ADD CONSTRAINT "arrival_delivery_id_fkey" FOREIGN KEY ("shop_id", "delivery_id") REFERENCES "delivery" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "arrival" ADD CONSTRAINT "arrival_part_line_id_fkey" FOREIGN KEY ("shop_id", "part_line_id") REFERENCES "part_line" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "temporary_fix" ADD CONSTRAINT "temporary_fix_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "temporary_fix" ADD CONSTRAINT "temporary_fix_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "temporary_fix" ADD CONSTRAINT "temporary_fix_job_id_fkey" FOREIGN KEY ("shop_id", "job_id") REFERENCES "job" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "temporary_fix" ADD CONSTRAINT "temporary_fix_line_id_fkey" FOREIGN KEY ("shop_id", "line_id") REFERENCES "work_line" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "temporary_fix" ADD CONSTRAINT "temporary_fix_season_id_fkey" FOREIGN KEY ("shop_id", "season_id") REFERENCES "season" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "temporary_fix" ADD CONSTRAINT "temporary_fix_follow_up_id_fkey" FOREIGN KEY ("shop_id", "follow_up_id") REFERENCES "follow_up" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "temporary_fix" ADD CONSTRAINT "temporary_fix_end_line_id_fkey" FOREIGN KEY ("shop_id", "end_line_id") REFERENCES "work_line" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "temporary_fix" ADD CONSTRAINT "temporary_fix_ended_by_id_fkey" FOREIGN KEY ("shop_id", "ended_by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "temporary_fix" ADD CONSTRAINT "temporary_fix_road_allowed_by_id_fkey" FOREIGN KEY ("shop_id", "road_allowed_by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "second_check" ADD CONSTRAINT "second_check_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "second_check" ADD CONSTRAINT "second_check_temporary_fix_id_fkey" FOREIGN KEY ("shop_id", "temporary_fix_id") REFERENCES "temporary_fix" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "second_check" ADD CONSTRAINT "second_check_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "second_check" ADD CONSTRAINT "second_check_person_id_fkey" FOREIGN KEY ("shop_id", "person_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "follow_up" ADD CONSTRAINT "follow_up_by_id_fkey" FOREIGN KEY ("shop_id", "by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "follow_up" ADD CONSTRAINT "follow_up_vehicle_id_fkey" FOREIGN KEY ("shop_id", "vehicle_id") REFERENCES "vehicle" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "follow_up" ADD CONSTRAINT "follow_up_from_job_id_fkey" FOREIGN KEY ("shop_id", "from_job_id") REFERENCES "job" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "follow_up" ADD CONSTRAINT "follow_up_line_id_fkey" FOREIGN KEY ("shop_id", "line_id") REFERENCES "work_line" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "follow_up" ADD CONSTRAINT "follow_up_needs_follow_up_id_fkey" FOREIGN KEY ("shop_id", "needs_follow_up_id") REFERENCES "follow_up" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "follow_up" ADD CONSTRAINT "follow_up_season_id_fkey" FOREIGN KEY ("shop_id", "season_id") REFERENCES "season" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "follow_up" ADD CONSTRAINT "follow_up_closed_by_id_fkey" FOREIGN KEY ("shop_id", "closed_by_id") REFERENCES "person" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "follow_up" ADD CONSTRAINT "follow_up_close_line_id_fkey" FOREIGN KEY ("shop_id", "close_line_id") REFERENCES "work_line" ("shop_id", "id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- The shop's log head: locked first by every command, so that number order = commit order = visibility order.
CREATE TABLE "head" (
  "shop_id" uuid NOT NULL,
  "seq" bigint NOT NULL DEFAULT 0,
  "config_seq" bigint NOT NULL DEFAULT 0,
  "epoch" uuid NOT NULL,
  "last_at" timestamptz(3) NOT NULL,
  -- Clock of demo and test shops: shown time = clock_shown + (real - clock_real) * clock_rate; real shops have none.
  "clock_real" timestamptz(3),
  "clock_shown" timestamptz(3),
  "clock_rate" double precision,
  CONSTRAINT "head_pkey" PRIMARY KEY ("shop_id")
);

-- Kept for good: no names, no free text.
CREATE TABLE "change" (
  "shop_id" uuid NOT NULL,
  "seq" bigint NOT NULL,
  "recorded_at" timestamptz(3) NOT NULL,
  "effective_at" timestamptz(3) NOT NULL,
  "person_id" uuid,
  "device" text,
  "command" text NOT NULL,
  "key" uuid,
  "subjects" jsonb NOT NULL,
  "facts" jsonb NOT NULL,
  CONSTRAINT "change_pkey" PRIMARY KEY ("shop_id", "seq")
);
CREATE INDEX "change_shop_id_recorded_at_idx" ON "change" ("shop_id", "recorded_at");

-- Row images and board differences, kept 30 days.
CREATE TABLE "change_rows" (
  "shop_id" uuid NOT NULL,
  "seq" bigint NOT NULL,
  "recorded_at" timestamptz(3) NOT NULL,
  "rows" jsonb NOT NULL,
  "staff" text NOT NULL,
  "wall" text NOT NULL,
  CONSTRAINT "change_rows_pkey" PRIMARY KEY ("shop_id", "seq"),
  CONSTRAINT "change_rows_seq_fkey" FOREIGN KEY ("shop_id", "seq") REFERENCES "change" ("shop_id", "seq")
);
CREATE INDEX "change_rows_shop_id_recorded_at_idx" ON "change_rows" ("shop_id", "recorded_at");

-- The answer to each accepted key, byte for byte, written in the command's own transaction.
CREATE TABLE "answer" (
  "shop_id" uuid NOT NULL,
  "sender" uuid NOT NULL,
  "key" uuid NOT NULL,
  "fingerprint" text NOT NULL,
  "status" integer NOT NULL,
  "body" text NOT NULL,
  "seq" bigint NOT NULL,
  "recorded_at" timestamptz(3) NOT NULL,
  CONSTRAINT "answer_pkey" PRIMARY KEY ("shop_id", "sender", "key")
);
CREATE INDEX "answer_shop_id_recorded_at_idx" ON "answer" ("shop_id", "recorded_at");

CREATE TABLE "session" (
  "shop_id" uuid NOT NULL,
  "id" uuid NOT NULL,
  "token_hash" text NOT NULL,
  "person_id" uuid NOT NULL,
  "started_at" timestamptz(3) NOT NULL,
  "seen_at" timestamptz(3) NOT NULL,
  "expires_at" timestamptz(3) NOT NULL,
  "ended_at" timestamptz(3),
  CONSTRAINT "session_pkey" PRIMARY KEY ("shop_id", "id"),
  CONSTRAINT "session_person_id_fkey" FOREIGN KEY ("shop_id", "person_id") REFERENCES "person" ("shop_id", "id")
);
CREATE UNIQUE INDEX "session_shop_id_token_hash_key" ON "session" ("shop_id", "token_hash");
CREATE INDEX "session_shop_id_person_id_idx" ON "session" ("shop_id", "person_id");

-- Images on disk, by content; a photo row names one of them.
CREATE TABLE "upload" (
  "shop_id" uuid NOT NULL,
  "content" text NOT NULL,
  "width" integer NOT NULL,
  "height" integer NOT NULL,
  "bytes" integer NOT NULL,
  "person_id" uuid NOT NULL,
  "uploaded_at" timestamptz(3) NOT NULL,
  CONSTRAINT "upload_pkey" PRIMARY KEY ("shop_id", "content")
);
ALTER TABLE "photo" ADD CONSTRAINT "photo_content_fkey" FOREIGN KEY ("shop_id", "content") REFERENCES "upload" ("shop_id", "content") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED;

-- What has no shop: the directory of shops, the accounts of people in several shops, their memberships.
CREATE TABLE "directory"."shop" (
  "id" uuid NOT NULL,
  "name" text NOT NULL,
  "name_key" text NOT NULL,
  "demo" boolean NOT NULL DEFAULT false,
  "made_at" timestamptz(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
  CONSTRAINT "shop_pkey" PRIMARY KEY ("id")
);
CREATE UNIQUE INDEX "shop_name_key_key" ON "directory"."shop" ("name_key");

CREATE TABLE "directory"."account" (
  "id" uuid NOT NULL,
  "password_hash" text NOT NULL,
  "pepper_id" text NOT NULL,
  "changed_at" timestamptz(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
  "disabled" boolean NOT NULL DEFAULT false,
  CONSTRAINT "account_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "directory"."membership" (
  "shop_id" uuid NOT NULL,
  "person_id" uuid NOT NULL,
  "account_id" uuid NOT NULL,
  "name_key" text NOT NULL,
  CONSTRAINT "membership_pkey" PRIMARY KEY ("shop_id", "person_id"),
  CONSTRAINT "membership_shop_id_fkey" FOREIGN KEY ("shop_id") REFERENCES "directory"."shop" ("id"),
  CONSTRAINT "membership_account_id_fkey" FOREIGN KEY ("account_id") REFERENCES "directory"."account" ("id")
);
CREATE UNIQUE INDEX "membership_shop_id_name_key_key" ON "directory"."membership" ("shop_id", "name_key");
CREATE INDEX "membership_account_id_idx" ON "directory"."membership" ("account_id");

-- Failed sign-ins in a row, by account and by place they come from; counted here so that all processes see them.
CREATE TABLE "directory"."sign_in_try" (
  "subject" text NOT NULL,
  "failures" integer NOT NULL,
  "wait_until" timestamptz(3) NOT NULL,
  CONSTRAINT "sign_in_try_pkey" PRIMARY KEY ("subject")
);

GRANT USAGE ON SCHEMA "public", "app" TO holdfast_app;
GRANT EXECUTE ON FUNCTION app.shop_id() TO holdfast_app;
GRANT USAGE ON SCHEMA "directory" TO holdfast_directory;
GRANT SELECT, INSERT, UPDATE ON "directory"."shop", "directory"."account", "directory"."membership" TO holdfast_directory;
GRANT SELECT, INSERT, UPDATE, DELETE ON "directory"."sign_in_try" TO holdfast_directory;
-- Which shops there are, for the feeds and the background work of every process; ids only.
GRANT USAGE ON SCHEMA "directory" TO holdfast_app;
GRANT SELECT ("id", "demo") ON "directory"."shop" TO holdfast_app;

-- The wall between shops: forced row-level security, a restrictive policy that no later permissive one can open.
DO $$
DECLARE t text;
BEGIN
  FOREACH t IN ARRAY ARRAY['shop', 'shop_setting', 'opening_hours', 'season', 'person', 'person_skill', 'person_hours', 'bay', 'bay_spec', 'supplier', 'counter', 'customer', 'contact', 'vehicle', 'odometer_reading', 'caution', 'job', 'concern', 'finding', 'photo', 'sheet', 'work_line', 'go_ahead', 'clock', 'place', 'spot_use', 'report', 'flag', 'hold', 'hold_line', 'hold_part', 'part_line', 'parts_order', 'due_in', 'delivery', 'arrival', 'temporary_fix', 'second_check', 'follow_up', 'head', 'change', 'change_rows', 'answer', 'session', 'upload'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', t);
    EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', t);
    EXECUTE format('CREATE POLICY shop_wall ON %I AS RESTRICTIVE TO holdfast_app USING (shop_id = (SELECT app.shop_id())) WITH CHECK (shop_id = (SELECT app.shop_id()))', t);
    EXECUTE format('CREATE POLICY staff ON %I TO holdfast_app USING (true) WITH CHECK (true)', t);
    EXECUTE format('GRANT SELECT, INSERT, UPDATE ON %I TO holdfast_app', t);
  END LOOP;
END $$;
-- The log is written once; only what is kept for a while may be cleared away.
REVOKE UPDATE ON "change", "change_rows", "answer" FROM holdfast_app;
GRANT DELETE ON "change_rows", "answer", "session" TO holdfast_app;
